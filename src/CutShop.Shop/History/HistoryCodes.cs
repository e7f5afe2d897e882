using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>
/// Every code of the history with its English words, which is their one home. Words may be changed at any time; a code, once stored,
/// means the same for good, and nothing but <see cref="HistoryEntry.InWords"/> reads the words.
/// </summary>
internal static class HistoryCodes
{
    private static readonly Dictionary<string, HistoryCode> Known = [];

    // Jobs.
    public static HistoryCode JobReceived { get; } = New("job-received", "received", after: Counted);
    public static HistoryCode JobTakenIn { get; } = New("job-taken-in", "taken in", after: Counted);
    public static HistoryCode JobReleased { get; } = New("job-released", "released");
    public static HistoryCode JobCancelled { get; } = New("job-cancelled", "cancelled", after: line => $"cancelled, {Surplus(line)}");
    public static HistoryCode JobChanged { get; } = New(
        "job-changed",
        "changed",
        before: line => Counted(line, "_before"),
        after: AfterChange);
    public static HistoryCode JobByRules { get; } = New(
        "job-by-rules", "changed to newer rules", before: line => Counted(line, "_before"), after: AfterChange);
    public static HistoryCode SitePackOpened { get; } = New("site-pack-opened", "site pack opened");
    public static HistoryCode SitePackReplaced { get; } = New("site-pack-replaced", "site pack replaced");

    // Tickets of both benches.
    public static HistoryCode TakenToBench { get; } = New("taken-to-bench", "taken to the bench");
    public static HistoryCode TakenOver { get; } = New("taken-over", "taken over", before: line => line.From, after: line => line.Who);
    public static HistoryCode HandedBack { get; } = New("handed-back", "handed back");
    public static HistoryCode HandedBackUnused { get; } = New(
        "handed-back-unused", line => $"handed back, nothing was done for {line.Number("minutes")} minutes");
    public static HistoryCode Undone { get; } = New("undone", "undone");
    public static HistoryCode TicketCancelled { get; } = New("ticket-cancelled", "cancelled");
    public static HistoryCode NoLongerWanted { get; } = New("no-longer-wanted", "no longer wanted");

    // Cut tickets.
    public static HistoryCode CutStepDone { get; } = New(
        "cut-step-done", line => CutStepWords.Of((CutStep)line.Number("step")), before: StepBefore, after: StepAfter);
    public static HistoryCode CutMeasured { get; } = New("cut-measured", line => $"measured {line.AfterLength}", before: StepBefore, after: StepAfter);
    public static HistoryCode CutNotMeasured { get; } = New(
        "cut-not-measured", line => $"not measured, counted as {line.AfterLength}", before: StepBefore, after: StepAfter);
    public static HistoryCode CutTooLong { get; } = New("cut-too-long", "measured too long, to be trimmed");
    public static HistoryCode CutPutAside { get; } = New("cut-put-aside", "put aside, to be cut again");
    public static HistoryCode CutFinished { get; } = New("cut-finished", "finished");
    public static HistoryCode CutRejected { get; } = New("cut-rejected", "not taken, to be cut again");
    public static HistoryCode Packed { get; } = New("packed", "packed");
    public static HistoryCode Unpacked { get; } = New("unpacked", "taken out of the parcel");
    public static HistoryCode SurplusHungUp { get; } = New("surplus-hung-up", "hung up as an offcut");
    public static HistoryCode SurplusScrapped { get; } = New("surplus-scrapped", "scrapped");

    // Drill tickets.
    public static HistoryCode BoreDrilled { get; } = New("bore-drilled", "drilled a bore", before: DrilledBefore, after: DrilledAfter);
    public static HistoryCode ScrewHoleDrilled { get; } = New("screw-hole-drilled", "drilled a screw hole", before: DrilledBefore, after: DrilledAfter);
    public static HistoryCode PostDrilled { get; } = New("post-drilled", line => "drilled, the rope fits" + WithIt(line.Number("screw_holes")));
    public static HistoryCode PostSpoiled { get; } = New("post-spoiled", "spoiled, another post ordered");
    public static HistoryCode NewPostHere { get; } = New("new-post-here", "the new post is here");

    // Coils.
    public static HistoryCode CoilReceived { get; } = New("coil-received", "received");
    public static HistoryCode OffcutHungUp { get; } = New("offcut-hung-up", line => $"offcut of {line.Text("coil")}");
    public static HistoryCode CutFrom { get; } = New("cut-from", "cut from");
    public static HistoryCode CutFromPutAside { get; } = New("cut-from-put-aside", "cut from, piece put aside");
    public static HistoryCode RestScrapped { get; } = New("rest-scrapped", "scrap");
    public static HistoryCode RestHungUp { get; } = New("rest-hung-up", line => $"rest hung up as {line.Text("offcut")}");
    public static HistoryCode CutUndone { get; } = New("cut-undone", "cut undone");
    public static HistoryCode OffcutTakenDown { get; } = New("offcut-taken-down", line => $"part of {line.Text("coil")} again, cut undone");
    public static HistoryCode CoilCorrected { get; } = New("coil-corrected", "adjusted");
    public static HistoryCode CoilRetired { get; } = New("coil-retired", "retired");

    // Cut plans.
    public static HistoryCode PlanDrafted { get; } = New("plan-drafted", "drafted");
    public static HistoryCode PlanAccepted { get; } = New("plan-accepted", "accepted");
    public static HistoryCode PlanReplaced { get; } = New("plan-replaced", line => $"replaced by plan {line.Number("plan")}");

    // Pieces and reports from site.
    public static HistoryCode PieceMarked { get; } = New("piece-marked", "marked on site");
    public static HistoryCode LabelReplaced { get; } = New("label-replaced", "label replaced");
    public static HistoryCode PieceCutAgain { get; } = New("piece-cut-again", "cut again");
    public static HistoryCode ReportSent { get; } = New("report-sent", "reported");
    public static HistoryCode ReportCutAgain { get; } = New("report-cut-again", "piece cut again");
    public static HistoryCode ReportClosed { get; } = New("report-closed", "closed");

    // The order desk.
    public static HistoryCode DraftStarted { get; } = New("draft-started", "started");
    public static HistoryCode DraftDropped { get; } = New("draft-dropped", "dropped");
    public static HistoryCode DraftReopened { get; } = New("draft-reopened", "taken up again");
    public static HistoryCode DraftTakenIn { get; } = New("draft-taken-in", "taken in");
    public static HistoryCode QuoteMade { get; } = New(
        "quote-made", "made", after: line => Money.FromTenThousandths(line.Number("total_e4")).ToString());
    public static HistoryCode QuoteAccepted { get; } = New("quote-accepted", "accepted");
    public static HistoryCode PriceListKept { get; } = New("price-list-kept", "kept");
    public static HistoryCode CurrencySet { get; } = New("currency-set", "currency sign set");

    // What the shop sets for itself.
    public static HistoryCode SettingSet { get; } = New("setting-set", line => $"{line.Text("setting")} set");
    public static HistoryCode BitHungUp { get; } = New("bit-hung-up", "hung up", after: line => BitName(line.AfterLength!.Value, line.After));
    public static HistoryCode BitTakenOff { get; } = New("bit-taken-off", "taken off", before: line => BitName(line.BeforeLength!.Value, line.Before));

    // People, tablets and keys.
    public static HistoryCode PersonAdded { get; } = New("person-added", "added");
    public static HistoryCode RoleChanged { get; } = New("role-changed", "role changed");
    public static HistoryCode PasswordSet { get; } = New("password-set", "password set");
    public static HistoryCode PinSet { get; } = New("pin-set", "PIN set");
    public static HistoryCode PinRemoved { get; } = New("pin-removed", "PIN taken away");
    public static HistoryCode PersonSwitchedOn { get; } = New("person-switched-on", "switched on");
    public static HistoryCode PersonSwitchedOff { get; } = New("person-switched-off", "switched off");
    public static HistoryCode UnitsChosen { get; } = New("units-chosen", "units chosen", before: line => Units(line.Before), after: line => Units(line.After));
    public static HistoryCode SignInLocked { get; } = New("sign-in-locked", "locked", after: line => $"for {line.Number("minutes")} minutes");
    public static HistoryCode TabletEnrolled { get; } = New("tablet-enrolled", "enrolled");
    public static HistoryCode TabletRemoved { get; } = New("tablet-removed", "removed");
    public static HistoryCode KeyMade { get; } = New("key-made", "made");
    public static HistoryCode KeyRevoked { get; } = New("key-revoked", "revoked");

    /// <summary>What an older program wrote in words that no code has: the words are kept as they were.</summary>
    public static HistoryCode Other { get; } = New("other", line => line.Text("words"));

    /// <summary>All codes.</summary>
    public static IReadOnlyCollection<HistoryCode> All => Known.Values;

    /// <summary>The code of a text; one that is not known here, which a newer program wrote, is shown as it is.</summary>
    public static HistoryCode Find(string code) => Known.TryGetValue(code, out var known) ? known : new(code, _ => code);

    private static HistoryCode New(
        string code, string what, Func<HistoryEntry, string>? before = null, Func<HistoryEntry, string>? after = null) => New(code, _ => what, before, after);

    private static HistoryCode New(
        string code, Func<HistoryEntry, string> what, Func<HistoryEntry, string>? before = null, Func<HistoryEntry, string>? after = null)
    {
        var made = new HistoryCode(code, what, before, after);
        Known.Add(code, made);
        return made;
    }

    private static string AfterChange(HistoryEntry line) =>
        $"{Counted(line)}; pieces {Changed(line, "pieces")}; posts {Changed(line, "posts")}; {Surplus(line)}";

    private static string Counted(HistoryEntry line) => Counted(line, when: "");

    private static string Counted(HistoryEntry line, string when) => $"{line.Number($"pieces{when}")} pieces, {line.Number($"bores{when}")} bores";

    private static string Changed(HistoryEntry line, string things) =>
        $"{line.Number($"{things}_added")} added, {line.Number($"{things}_changed")} changed, {line.Number($"{things}_gone")} gone";

    private static string Surplus(HistoryEntry line) => $"{line.Number("surplus")} made and now surplus";

    private static string StepBefore(HistoryEntry line) => $"step {line.Number("step_before")} of {line.Number("steps")}";

    private static string StepAfter(HistoryEntry line) => $"step {line.Number("step")} of {line.Number("steps")}";

    private static string DrilledBefore(HistoryEntry line) => $"{line.Number("drilled_before")} of {line.Number("drillings")} drilled";

    private static string DrilledAfter(HistoryEntry line) => $"{line.Number("drilled")} of {line.Number("drillings")} drilled";

    /// <summary>Screw holes that were not ticked one by one.</summary>
    private static string WithIt(long screwHoles) => screwHoles switch
    {
        0 => "",
        1 => ", 1 screw hole with it",
        _ => $", {screwHoles} screw holes with it",
    };

    private static string BitName(Length diameter, string kind) => $"{LengthText.Brief(diameter)} {kind}";

    private static string Units(string code) => code.Replace('-', ' ');
}
