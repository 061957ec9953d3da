// %% [markdown]
// # Is this listing overpriced?
//
// Before you drive out to a car you want to know whether its price is high, low or what such cars cost. This notebook takes the
// listings that you collected, says what became of every row, fits one price model to them, and judges one listing with its own car
// left out.
//
// A value here never stands alone: it comes with its range, with the cars behind it, with its day and with the level of trade.

// %%
import swapworth.assumptions.*;
import swapworth.chart.*;
import swapworth.listing.*;
import swapworth.market.*;
import swapworth.report.*;
import static swapworth.notebook.Show.show;

Path folder = Path.of(System.getProperty("folder", "sample-listings"));

// %% [markdown]
// ## What was read
//
// Every row is used, set aside or rejected, and the table says how many of each. A row is *set aside* when it can be read but not used,
// such as a price of 0. It is *rejected* when it could be read in two ways or not at all: nothing is guessed.

// %%
ListingsRead read = Listings.read(folder.resolve("listings.csv"));
Check check = Check.of(read);
show(check.counts());

// %% [markdown]
// The rows that were left out, each with its line, its text and the reason. Mend those in your file and run this again.

// %%
show(check.setAside(), check.rejected());

// %% [markdown]
// Several sightings of one advertisement are one car, and a car counts once. Look at how many cars stand behind each line: with six,
// assumptions carry much of the answer; with sixty, your rows do.

// %%
check.lines()

// %% [markdown]
// ## How far to believe the model
//
// One model prices every line in the file at once, so that lines with few cars learn from the others. Here each car is valued by all
// *other* cars, and the values are held against the prices that you saw.
//
// Look first at the row of prices inside their 80 % range. If these are about 80 in a hundred of your prices, the range keeps its
// promise.

// %%
PriceModel model = PriceModel.options().with(Assumptions.ofFolder(folder)).fit(read.cars());
Judged judged = Judged.of(read, model);
judged.study().map(study -> ModelTables.fit(model, study))

// %% [markdown]
// What moves the price, by your rows and the assumptions together. A wide bar says that the file tells little of this yet.

// %%
MarketCharts.terms(judged)

// %% [markdown]
// ## Price against mileage
//
// The line with most cars: each price is moved to what it would be for one and the same car in everything but mileage, so that the dots
// can be compared. The band holds eight of ten single cars.

// %%
MarketCharts.priceAgainstMileage(judged, model.lines().get(0))

// %% [markdown]
// ## Asked against fair value
//
// Every car at its latest price. On the line the price is the fair value; a dot to the right of it is dearer than such cars are.

// %%
MarketCharts.askedAgainstValue(judged)

// %% [markdown]
// ## What is on offer now
//
// The cars seen in the last two weeks of the collection that are still open, the cheapest against its value first. About one price in
// ten lies below the range by chance alone: *below* is a reason to look, not a reason to buy.

// %%
judged.onOffer("")

// %% [markdown]
// ## One listing
//
// Of the cars still on offer, this one stands furthest above its value. To take another, see the end of this notebook.

// %%
JudgedListing listing = JudgedListing.dearestOnOffer(judged);
show(listing);

// %% [markdown]
// ## Why: the cars it is compared with
//
// These are the cars whose difference from this one is least unsure, not those with the nearest price. Each price is moved toward this
// car line by line: times so much for mileage, for age, for condition. The last rows close the account, so you can follow it to the
// value with a pocket calculator.

// %%
listing.comparables()

// %% [markdown]
// The first of them in a picture: from the price that was seen to the value of this car. What the other cars and the assumptions add
// is the last step.

// %%
MarketCharts.adjustments(listing)

// %% [markdown]
// ## What would narrow it
//
// More rows help where the answer still hangs on assumptions. They do not help where one such car simply differs from another.

// %%
show(listing.narrowedBy(), check.questions());

// %% [markdown]
// ## For your own files
//
// - Put your `listings.csv` into a folder and run `target/swapworth notebook notebooks/1-is-this-listing-overpriced.jsh --folder FOLDER`.
//   The folder is the only setting.
// - To judge a listing of your choice, write `JudgedListing.of(judged, "its id")` under *One listing*. A car that is
//   not in the file yet goes in as a row: the model that judges it leaves it out anyway.
// - To see another line against mileage, write its name in place of `model.lines().get(0)`.
// - If you know better than one of the assumptions, write it into `assumptions.csv` in your folder.

// %%
show(Part.cautions("Before you rely on any of this", Cautions.ofValues()));
