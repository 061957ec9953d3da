// %% [markdown]
// # Is the market cooling?
//
// Prices of the cars that you watch stand high, everybody says that they will settle, and nobody knows when. You look at the same
// searches every week and keep what you see. From these sightings this notebook tells how the level has moved with the cars held still,
// how fast it moves and how sure that is, where it may go, and how long such cars take to sell.
//
// The average price of what is on offer is no answer: other cars are on offer every month, and the same cars grow older. Here the cars
// are held still by the price model, and each figure comes with its range.

// %%
import swapworth.assumptions.*;
import swapworth.chart.*;
import swapworth.listing.*;
import swapworth.market.*;
import swapworth.project.*;
import swapworth.report.*;
import static swapworth.notebook.Show.show;

Path folder = Path.of(System.getProperty("folder", "sample-listings"));

// %% [markdown]
// ## What the listings say
//
// First what is seen directly, *one and the same car*: the market and its growing older together. Then *cars of the same age*, with ageing
// taken out: the market itself. Read what the listings cannot tell apart before you use either.

// %%
ListingsRead read = Listings.read(folder.resolve("listings.csv"));
PriceModel model = PriceModel.options().with(Assumptions.ofFolder(folder)).fit(read.cars());
Answer<MarketIndex> index = model.index();
show(index.map(IndexTables::summary), index.map(MarketIndex::cautions));

// %% [markdown]
// ## The level of the market
//
// Cars of the same age, the first month 100. The bands are what the listings leave open: eight and nineteen of twenty times the level lies
// within. Bands are narrow near the base month because they are about the move since then.

// %%
index.map(TimeCharts::index)

// %% [markdown]
// What your own car loses: the line is one and the same car as it grows older, the broken line what ageing alone would have taken. Between
// the two lies what the market did.

// %%
index.map(TimeCharts::againstDepreciation)

// %% [markdown]
// ## How fast, and since when
//
// Look at the two spreads. The first is what was unsure before any listing was read, the second what is still unsure. Where they hardly
// differ, the figure is an assumption and not a finding.

// %%
show(index.map(IndexTables::drift), index.map(i -> IndexTables.lines(model, i)), index.map(IndexTables::peak));

// %% [markdown]
// ## Where it may go
//
// The drift and the walk of the months carried on, a few thousand times. Nothing that comes from outside the listings is in it: read the
// width, not the middle.

// %%
index.map(i -> IndexTables.outlook(model, i))

// %% [markdown]
// ## Is the model leading astray?
//
// Two plainer methods beside the index. They jump about more, but they should not tell another story.

// %%
index.map(IndexTables::comparison)

// %% [markdown]
// ## How long such cars take to sell
//
// The same car under a new advertisement must be known again, or its days on offer start anew. How well that works was tried on open
// listings of dealers, 985 cars by the ids of the set over five looks in 2017: with the ids taken away 98.5 % of the links from one look to
// the next were found and 1.6 % of those found were false; with each mileage grown by up to 300 miles a month on top, 90.1 to 91.8 % and
// 2.4 to 3.0 %, in eight trials. Some of the false ones carry equal mileage, trim and price under two ids.
//
// A car that came up between two looks has been on offer since one of the days between; those that stood there at the first look, nobody
// knows since when, are left out if enough others are there. A car that vanished is not a sale: but for chance, such cars lie between
// the two curves. Cars that were asked above their fair value should stay longer; how much longer is what a seller pays for trying.

// %%
Answer<TimeOnMarket> time = TimeOnMarket.of(model);
show(time.map(TimeCharts::untilSale), time.map(TimeCharts::untilSaleByAsk), time.map(TimeOnMarket::tables));

// %% [markdown]
// How far each ask had come down when it was last seen.

// %%
time.map(TimeCharts::cuts)

// %% [markdown]
// ## Now or later
//
// A falling market does not pay for waiting by itself: what you buy falls, and so does what you will sell. This puts both legs on the same
// states of the market, and both grow older: whoever waits buys cars of the same model years. It needs a donor, a recipient
// and a finished car in `cars.csv`.

// %%
Undertaking.Answers told = Undertaking.of(folder).answers();
show(told.nowOrLater(), told.nowOrLater().map(ProjectCharts::nowOrLater));

// %% [markdown]
// And above which price to walk away from a car, whatever the market does.

// %%
told.walkAway()

// %% [markdown]
// ## For your own files
//
// - Put your `listings.csv` into a folder and run `target/swapworth notebook notebooks/5-is-the-market-cooling.jsh --folder FOLDER`.
//   It needs `seen_on`, and the same searches again in later months: with less than six months or thirty cars, or nearly all of
//   them of one or two looks, there is no outlook.
// - Write the row again when you see the car again, under the same `id`, and write `outcome` and `ended_on` when it is sold or gone.
// - Another base month: `model.index().map(i -> i.withBase(java.time.YearMonth.of(2025, 9)))`. One line: `model.index().map(i ->
//   i.ofLine(model.lines().get(0)))`.
// - If you know better than one of the assumptions (`market_drift`, `spread_market_month`, `age_slope`), write it into `assumptions.csv`.

// %%
show(Part.cautions("Before you rely on any of this", Cautions.ofValues()));
