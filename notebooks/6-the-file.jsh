// %% [markdown]
// # The file
//
// In the end a buyer, a lender or an insurer asks for proof. This notebook makes the file that you hand on: what the car is, both
// mileages, what it is worth and by which listings, what was done and paid, and what to check with whom.
//
// What others read holds no figure of what is left to you, no bracket, and nobody's notes, links or numbers.

// %%
import swapworth.project.*;
import swapworth.report.*;
import swapworth.report.ProjectFile.Reader;
import static swapworth.notebook.Show.show;

Path folder = Path.of(System.getProperty("folder", "sample-listings"));
Undertaking undertaking = Undertaking.of(folder);

// %% [markdown]
// ## What must be settled first
//
// Look here before you hand anything on: what is unknown to you will be asked of you.

// %%
show(undertaking.answers().gates(), undertaking.answers().gates().map(Gates::warnings));

// %% [markdown]
// ## The file for a buyer
//
// Read it as the other side will. Receipts stand by their names; where a name held a link or a number it says that you keep it.

// %%
Page buyer = ProjectFile.of(folder, undertaking, Reader.BUYER);
show(buyer.lead());
buyer.sections().forEach(section -> show(section.parts()));

// %% [markdown]
// ## What an insurer reads beside it
//
// The two ends between which a sum to insure lies are for you; the insurer reads what the work would cost again.

// %%
show(undertaking.answers().redoCost(), undertaking.answers().redoCost().map(RedoCost::evidence));

// %% [markdown]
// ## For your own files
//
// - `target/swapworth project FOLDER --for buyer --page buyer.html` writes the file as a page of its own; open it in a browser and print it
//   as PDF. There is `--for lender`, `--for insurer`, and `--for self` with everything.
// - It grows with `cars.csv` (a row of the role finished with `documented`, `inspected`, `approved`, ...), `listings.csv`, `ledger.csv`
//   with the names of your receipts, `gates.csv`, and pictures in the folder or in `photos` within it.

// %%
show(undertaking.missing(), Part.cautions("Before you rely on any of this", Cautions.ofSwaps()));
