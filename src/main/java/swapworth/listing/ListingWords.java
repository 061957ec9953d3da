package swapworth.listing;

import swapworth.reading.Vocabulary;

/** The words that the columns of a listings file may hold, and what each stands for. */
final class ListingWords {

    static final Vocabulary<PriceKind> PRICE_KIND = Vocabulary.<PriceKind>empty()
            .with(PriceKind.ASKING, "asking", "ask", "asked", "asking price", "offer", "list", "list price", "advertised")
            .with(PriceKind.SOLD, "sold", "sold for", "paid", "sale", "sale price", "winning bid", "hammer", "hammer price",
                    "final bid")
            .with(PriceKind.BID_NOT_MET, "bid not met", "bid", "high bid", "reserve not met", "not met", "no sale", "unsold",
                    "passed", "offer refused", "refused offer");

    static final Vocabulary<PriceIncludes> PRICE_INCLUDES = Vocabulary.<PriceIncludes>empty()
            .with(PriceIncludes.NEITHER, "neither", "none", "nothing", "no", "excluding fees and tax", "plus fees and tax", "net")
            .with(PriceIncludes.FEES, "fees", "fee", "with fees", "including fees", "incl fees", "incl. fees", "buyer's fees")
            .with(PriceIncludes.TAX, "tax", "vat", "sales tax", "with tax", "including tax", "incl tax", "incl. tax", "incl vat")
            .with(PriceIncludes.BOTH, "both", "fees and tax", "tax and fees", "fees; tax", "fees, tax", "all in", "everything");

    static final Vocabulary<Seller> SELLER = Vocabulary.<Seller>empty()
            .with(Seller.PRIVATE, "private", "private seller", "private party", "owner", "by owner", "individual", "person")
            .with(Seller.TRADE, "trade", "dealer", "dealership", "by dealer", "garage", "business", "trader", "shop", "franchise")
            .with(Seller.AUCTION, "auction", "auctions", "auctioneer", "auction house", "salvage auction", "online auction");

    /**
     * Advertisements speak of the engine first. Who writes {@code runs} says that the engine starts and nothing of driving, so it is
     * {@link Runs#ENGINE_FIRES} and not more. Who writes {@code no start} or {@code non runner} tried, and the engine does not run:
     * {@link Runs#ENGINE_DEAD}, whatever the cause, and never {@link Runs#NOT_TRIED}. {@code yes} and {@code no} say neither which
     * question they answer; {@code blown}, {@code starter} and their like may mean several things: they are not understood.
     */
    static final Vocabulary<Runs> RUNS = Vocabulary.<Runs>empty()
            .with(Runs.DRIVES, "drives", "runs and drives", "runs & drives", "runs/drives", "runs, drives", "runs drives",
                    "run and drive", "run & drive", "run/drive", "run drive", "running and driving", "starts and drives", "starts, drives",
                    "starts runs and drives", "starts, runs and drives", "starts, runs, drives", "drives well", "drives fine", "drivable",
                    "driveable", "driving", "driven")
            .with(Runs.ENGINE_FIRES, "engine fires", "fires", "engine starts", "starts", "engine runs", "runs", "running", "engine running",
                    "runs well", "runs fine", "starts and runs", "starts, runs", "engine starts and runs", "starts, not driven",
                    "starts but does not drive", "starts but doesn't drive", "runs but does not drive", "runs, does not drive",
                    "runs but doesn't drive", "runs, doesn't drive", "runs but won't drive", "runs, not driven")
            .with(Runs.ENGINE_DEAD, "engine dead", "dead", "dead engine", "engine blown", "blown engine", "seized", "engine seized",
                    "seized engine", "does not start", "doesn't start", "doesnt start", "won't start", "wont start", "will not start",
                    "no start", "cranks, no start", "cranks but no start", "cranks but won't start", "cranks but does not start",
                    "engine does not run", "does not run", "doesn't run", "doesnt run", "won't run", "wont run", "will not run",
                    "not running", "engine not running", "non runner", "nonrunner", "non running")
            .with(Runs.NO_ENGINE, "no engine", "without engine", "engine missing", "missing engine", "engine removed", "engine out",
                    "engine gone", "no motor", "roller", "shell", "rolling shell")
            .with(Runs.NOT_TRIED, "not tried", "untried", "untested", "not tested", "engine not tested", "nobody tried", "not started",
                    "never tried");

    static final Vocabulary<Condition> CONDITION = Vocabulary.<Condition>empty()
            .with(Condition.SOUND, "sound", "good", "very good", "excellent", "fine", "ok", "okay", "as new", "like new", "mint",
                    "none",
                    "no", "clean", "complete", "full")
            .with(Condition.WORN, "worn", "fair", "used", "average", "some", "light", "minor", "surface", "partial", "part")
            .with(Condition.BAD, "bad", "poor", "rough", "heavy", "severe", "rotten", "needs work", "major", "holes", "missing");

    static final Vocabulary<Keys> KEYS = Vocabulary.<Keys>empty()
            .with(Keys.YES, "yes", "y", "true", "1", "2", "3", "present", "one", "two", "both")
            .with(Keys.NO, "no", "n", "false", "0", "none", "missing", "lost");

    static final Vocabulary<Airbags> AIRBAGS = Vocabulary.<Airbags>empty()
            .with(Airbags.IN_PLACE, "in place", "intact", "not fired", "not deployed", "undeployed", "ok", "good", "present")
            .with(Airbags.FIRED, "fired", "deployed", "blown", "popped", "gone off")
            .with(Airbags.GONE, "gone", "missing", "removed", "none", "stolen");

    static final Vocabulary<Title> TITLE = Vocabulary.<Title>empty()
            .with(Title.CLEAN, "clean", "clear", "clean title", "clear title", "no brand", "unbranded")
            .with(Title.REBUILT, "rebuilt", "rebuilt title", "rebuilt salvage", "reconstructed", "restored salvage",
                    "repaired salvage")
            .with(Title.SALVAGE, "salvage", "salvage title", "salvaged")
            .with(Title.PARTS_ONLY, "parts only", "parts", "for parts", "non repairable", "nonrepairable", "junk", "scrap",
                    "destruction",
                    "certificate of destruction", "dismantle only");

    static final Vocabulary<Damage> DAMAGE = Vocabulary.<Damage>empty()
            .with(Damage.FRONT, "front", "front end", "nose", "frontal")
            .with(Damage.REAR, "rear", "rear end", "back", "tail")
            .with(Damage.LEFT, "left", "left side", "left hand side")
            .with(Damage.RIGHT, "right", "right side", "right hand side")
            .with(Damage.ROOF, "roof", "top", "rollover", "rolled", "roll over")
            .with(Damage.UNDERSIDE, "underside", "undercarriage", "underneath", "under", "floor")
            .with(Damage.FLOOD, "flood", "water", "flooded", "flood damage", "water damage")
            .with(Damage.FIRE, "fire", "burn", "burnt", "burned", "fire damage");

    static final Vocabulary<Outcome> OUTCOME = Vocabulary.<Outcome>empty()
            .with(Outcome.OPEN, "open", "still open", "on offer", "for sale", "live", "active", "available", "listed")
            .with(Outcome.SOLD, "sold")
            .with(Outcome.WITHDRAWN, "withdrawn", "taken back", "kept", "cancelled", "canceled", "not sold", "unsold", "no sale")
            .with(Outcome.GONE, "gone", "vanished", "ended", "expired", "removed", "deleted", "disappeared");

    static final Vocabulary<Saved> SAVED = Vocabulary.<Saved>empty()
            .with(Saved.WHOLE_SEARCH, "whole search", "whole", "all", "search", "all results", "complete")
            .with(Saved.PICKED, "picked", "pick", "chosen", "hand picked", "selected", "favourite", "favorite");

    static final Vocabulary<MileageStatus> MILEAGE_STATUS = Vocabulary.<MileageStatus>empty()
            .with(MileageStatus.READ, "read", "read off", "seen", "odometer", "on the clock")
            .with(MileageStatus.RECORDED, "recorded", "papers", "documented", "from papers", "records", "documents");

    static final Vocabulary<DrivenWheels> DRIVEN_WHEELS = Vocabulary.<DrivenWheels>empty()
            .with(DrivenWheels.FRONT, "front", "fwd", "front wheels", "front wheel drive", "front wheel", "2wd front")
            .with(DrivenWheels.REAR, "rear", "rwd", "rear wheels", "rear wheel drive", "rear wheel", "2wd rear")
            .with(DrivenWheels.ALL, "all", "awd", "4wd", "4x4", "all wheels", "all wheel drive", "four wheel drive", "four");

    private ListingWords() {
    }

    /** Whether a damage cell says outright that there is none. */
    static boolean saysNoDamage(String key) {
        return switch (key) {
            case "none", "no", "no damage", "undamaged", "nothing" -> true;
            default -> false;
        };
    }

    /** Whether a kind of price, or the header of prices, speaks of an auction's result. */
    static boolean saysHammer(String key) {
        return key.startsWith("hammer") || key.startsWith("winning bid") || key.startsWith("final bid");
    }
}
