// %% [markdown]
// # What is the swap worth?
//
// The finished car has the body of one line and the running gear of another. Nobody has sold one, so no listing answers directly. This
// notebook puts together what can be known: what the market pays for the body and for the running gear in other cars, what the parts cost,
// and where swaps that you saw stand between the stock car and the car that the maker sold with such running gear.
//
// The range is wide, because little is known. It names what it rests on, and each offer that you get narrows it.

// %%
import swapworth.chart.*;
import swapworth.market.*;
import swapworth.project.*;
import swapworth.report.*;
import swapworth.swap.*;
import static swapworth.notebook.Show.show;

Path folder = Path.of(System.getProperty("folder", "sample-listings"));

// %% [markdown]
// ## The model of all listings
//
// One model prices every line at once. Where lines share a body or a running gear it takes their levels apart into the two and their
// pair, and that is what a swap needs.

// %%
Undertaking.Answers told = Undertaking.of(folder).answers();
show(told.market().map(m -> m.read().counts().sentence()), told.market().map(m -> m.read().cars().size() + " cars"));

// %% [markdown]
// ## The finished car
//
// It is the row of the role `finished` in `cars.csv`; the car of the role `factory equivalent` is the one that the maker sold with such
// running gear. Swaps of other people stand in `swaps.csv`.

// %%
show(told.market().map(m -> m.swaps().notes()), told.market().map(m -> m.swaps().table()));

// %% [markdown]
// ## The approaches, and what they come to
//
// Each bar without a star holds eight of ten (thick) and nineteen of twenty (thin) single cars. The approaches share your listings and the
// assumptions, so that they agree proves little; they are weighted by how they move together. Swaps that you saw of the same body and
// running gear then move what they say together to the reconciled value. Stock car, factory equivalent (at either distance) and the car
// taken apart stand below with a star: middle prices of such cars, whose bars do not hold single cars and are narrower for that. None of
// them cuts the result off.

// %%
Answer<SwapValue> value = told.finished();
value.flatMap(v -> told.market().map(m -> SwapCharts.approaches(v, m.swaps().currency().getCurrencyCode())))

// %% [markdown]
// The same in figures, with the weight of each, how much of it assumptions hold, and what is to be known of it.

// %%
value.map(v -> List.of(v.result(), v.approachesTable(), v.brackets()))

// %% [markdown]
// ## Step by step
//
// From the stock car to the finished car and from the factory equivalent to the finished car: each step with its factor and the range
// of the factor. Follow them with a pocket calculator.

// %%
value.map(SwapValue::grids)

// %% [markdown]
// Which bodies and running gears were seen together, and what each pair would cost in the state of the finished car.

// %%
value.map(SwapValue::pairs)

// %% [markdown]
// ## What an offer teaches
//
// Say the car stands for seven weeks at a price a fifth above its value without a taker, and you refuse one serious offer a tenth below
// its value. The order of the two does not matter. What you refused is a bound below what the car is worth to *you*, too.

// %%
Answer<SwapAnswer> taught = value.map(v -> v.with(List.of(OwnOffer.noTaker(1.2 * v.median(), 49), OwnOffer.refused(0.9 * v.median()))));
show(taught.map(t -> t.tables().get(0)), value.map(v -> "80 % range before the offers: " + v.range(0.80)));

// %% [markdown]
// ## What would narrow it

// %%
value.map(SwapValue::narrowing)

// %% [markdown]
// ## What to ask
//
// A dearer car waits longer. How many takers come is an assumption, so set the day on which you cut the price before you begin.

// %%
value.map(SwapValue::selling)

// %% [markdown]
// ## What a buyer must be told
//
// Two distances, always apart, each with its status. Fill in what is unknown before somebody asks.

// %%
value.map(SwapValue::disclosure)

// %% [markdown]
// ## For your own files
//
// - Put `listings.csv` and `cars.csv` into a folder, with one row of the role `finished` (its `vehicle` is the car whose body it has, its
//   `running_gear` or `gear_line` the gear that is in it) and one of the role `factory equivalent`. Run
//   `target/swapworth notebook notebooks/3-what-is-the-swap-worth.jsh --folder FOLDER`. The folder is the only setting.
// - Write what the gear and the work would cost today into `gear_value` and `work_value` of that row: what you spent is not what it is
//   worth.
// - Write every swap that you see for sale, sold, or for which an offer was refused into `swaps.csv`. Three of them tell more than any
//   assumption.
// - When your own car is on offer, write what happens into `swaps.csv` with its name under `own_car`.
// - If you have a reason to trust one approach more, `SwapValue.options().weighted(...)` takes your weights and shows your reason.

// %%
show(Part.cautions("Before you rely on any of this", Cautions.ofSwaps()));
