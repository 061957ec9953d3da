// %% [markdown]
// # Where does the money stand?
//
// You are building. This notebook takes the ledger of your undertaking and says what is spent, what is still to come, what you have in
// it net of the parts sold, what would be left, whether to go on, and against what.
//
// A forecast never stands alone: it comes with its range, with the rows behind it and with what drives it.

// %%
import swapworth.chart.*;
import swapworth.market.*;
import swapworth.project.*;
import swapworth.report.*;
import static swapworth.notebook.Show.show;

Path folder = Path.of(System.getProperty("folder", "sample-listings"));

// %% [markdown]
// ## Where every cent is
//
// A row of `ledger.csv` needs a day, an amount and a note; the rest has defaults. What came back and what was sold stand in columns of
// their own, so that nothing is counted twice. Own hours are in no amount.

// %%
Undertaking undertaking = Undertaking.of(folder);
Undertaking.Answers told = undertaking.answers();
Answer<Ledger> ledger = told.ledger();
undertaking.read().forEach(rows -> show(rows.table()));
show(ledger.map(Ledger::sums));

// %% [markdown]
// The rows behind a figure are one call away, each with its line in the file.

// %%
ledger.map(l -> l.sums().rowsOf(Category.PART))

// %% [markdown]
// ## What is still to come
//
// What is paid and agreed stands as it is. Estimates are drawn between their low and high ends, or around the likely amount with the
// spread of their category from the assumptions. The bars go from the purchase by the likely amounts to the forecast. Look at the first
// rows of what drives the spread: a firm offer for one of them narrows the forecast most.

// %%
Answer<Forecast> forecast = told.forecast();
show(forecast.map(Forecast::figures), forecast.map(ProjectCharts::moneyWaterfall), forecast.map(ProjectCharts::cashByMonth));
show(forecast.map(Forecast::spread), forecast.map(ProjectCharts::drivers));

// %% [markdown]
// ## What is wanted and not needed
//
// A wish list grows. A row with `no` under `needed` is an extra: what it still costs stands against what it adds to the price of the
// finished car, by your guess (`adds`) or else by a share of its cost.

// %%
told.extras()

// %% [markdown]
// ## What would be left
//
// The value of the finished car less the money in it, draw by draw: what moves both moves both. Cash comes first, then the cost of
// money, then your own hours at a rate that is yours to choose. The break-even rate turns it round: what an hour may cost before nothing
// is left.

// %%
show(told.equity(), told.equity().map(ProjectCharts::equity));

// %% [markdown]
// On a customer's car nothing of that is yours: with rows of the category `invoice` this says what the job leaves.

// %%
told.job()

// %% [markdown]
// ## Finish or stop
//
// Money already spent is gone either way and stands nowhere here.

// %%
told.finishOrStop()

// %% [markdown]
// ## What it would cost to do it again
//
// Receipts are old prices. This carries every row to today, and shows the two ends between which a sum to insure lies. Which one is
// your choice.

// %%
show(told.redoCost(), told.redoCost().map(RedoCost::evidence));
show(undertaking.keeping());

// %% [markdown]
// ## Against what
//
// Every alternative at the same day, with all its costs and its resale. The chances are counted draw by draw; 50 means that your rows
// cannot tell.

// %%
show(told.alternatives(), told.alternatives().map(ProjectCharts::alternatives));

// %% [markdown]
// ## For your own files
//
// Put `ledger.csv` into your folder and run `target/swapworth notebook notebooks/4-where-does-the-money-stand.jsh --folder FOLDER`. With
// `listings.csv` and `cars.csv` (one row of the role finished) the value of the finished car joins in; `alternatives.csv` and `gates.csv`
// answer the rest. Which rows would narrow the answer most, and what is missing:

// %%
show(told.equity().map(e -> undertaking.narrowing()), undertaking.missing());
show(Part.cautions("Before you rely on any of this", Cautions.ofMoney()));
