// %% [markdown]
// # What does the donor really cost, and which recipient?
//
// A bid is not what a donor costs, and a list of all its parts at full price is not what comes back. This notebook takes the cars that
// you think of buying, adds every fee until each stands in your yard, takes off what the left-over parts bring, and puts the cars side
// by side.
//
// Nothing here says what is lawful where you live. Ask before you strip a car, and before you sell a part.

// %%
import swapworth.assumptions.*;
import swapworth.chart.*;
import swapworth.donor.*;
import swapworth.market.*;
import swapworth.report.*;
import static swapworth.notebook.Show.show;

Path folder = Path.of(System.getProperty("folder", "sample-listings"));

// %% [markdown]
// ## The files
//
// `cars.csv` names the cars, `fees.csv` what a purchase costs beside the bid, `partout.csv` which parts are sold and which go into the
// swap, `parts.csv` used parts that you saw on offer. `listings.csv` says what whole cars are worth; the draws are joint, so that draw
// number 7 of every figure below is one and the same state of the market. Where a file is not there, the sections that need it say so.

// %%
BigDecimal most = new BigDecimal("6000");
DonorStudy study = DonorStudy.of(folder, most);
String money = study.currency().getCurrencyCode();
study.read().forEach(rows -> show(rows.table()));

// %% [markdown]
// ## At the door
//
// Every line of the landed cost is charged by one table of `fees.csv`. Look at what a low bid becomes: fees in steps weigh most on
// cheap cars.

// %%
study.landed().map(DonorCharts::landed)

// %% [markdown]
// One car with every line. Lines that add nothing say why.

// %%
Answer<String> donor = study.first();
donor.flatMap(study::landedOf)

// %% [markdown]
// ## The most you can bid
//
// If you want to pay no more than the sum stated above (`most`) in all, this is the bid before which to stop. It is found by search,
// because the cost jumps where a fee steps. The shaded bid is lower: who bids wins most often when he thinks too well of a car.

// %%
study.landed().map(Landed::bidTable)

// %% [markdown]
// ## What the damage leaves
//
// Each part with its state, by the damage and by whether the engine runs. A row of `partout.csv` that knows better counts before it.

// %%
Answer<PartOut> parts = study.partOut(donor);
parts.map(PartOut::leftTable)

// %% [markdown]
// ## What the parts bring
//
// Each history draws which parts turn out good, when each finds its buyer, what it sells for, and every assumption within its spread. Fees,
// postage, packing, returns and the space are paid; hours are counted and not priced.

// %%
show(parts.map(p -> p.recovery().map(r -> r.table(money))), parts.map(p -> DonorCharts.recoveryByMonth(p, money)));

// %% [markdown]
// ## Which parts are worth the work
//
// Listing a part pays where an hour of yours is worth less than its net per hour.

// %%
show(parts.map(p -> DonorCharts.netPerHour(p, money)), parts.map(p -> p.recovery().map(r -> r.partsTable(money))));

// %% [markdown]
// ## Which donor, which recipient
//
// Net costs side by side, those of donors with what must be replaced of their gear. Where the 80 % range of a difference holds 0,
// money does not decide: take the car that you trust more.

// %%
study.choiceTables()

// %% [markdown]
// A recipient with a dead engine has two prices: as such cars sell, and as one that runs less what it costs to make it run. Believe
// neither where they are far apart.

// %%
study.bracketTables()

// %% [markdown]
// What else could be done with each donor, on the same draws, and what a pulled drivetrain set would cost instead.

// %%
study.useTables()

// %% [markdown]
// ## For your own files
//
// - Put `fees.csv`, `partout.csv`, `parts.csv` and `listings.csv` beside your `cars.csv`, as many of them as you have, and run
//   `target/swapworth notebook notebooks/2-donor-and-recipient.jsh --folder FOLDER`. The folder is the only setting.
// - To look at another car, write `new Answer.Told<>("its name")` in place of `study.first()`.
// - To bid for another sum, write it in place of `6000` above.
// - Every chance, price, hour and fee that stands in where your files do not speak is a row of the table below; `assumptions.csv` in
//   your folder replaces any.

// %%
show(Assumptions.ofFolder(folder).table(Question.DONOR));
show(Part.cautions("Before you rely on any of this", Cautions.ofDonors()));
