using System.Runtime.CompilerServices;
using CutShop.Takeoff.Lengths;

using static CutShop.Shop.Store.HistoryWords;

namespace CutShop.Shop.Store;

/// <summary>
/// Every code of the history. Its words are in <see cref="HistoryWords"/>, by the name of its property, and may change at any time; a
/// code, once stored, means the same for good, and nothing but <see cref="HistoryEntry.InWords"/> reads the words.
/// </summary>
internal static class HistoryCodes
{
    private static readonly Dictionary<string, HistoryCode> Known = [];

    // Jobs.
    public static HistoryCode JobReceived { get; } = New("job-received", after: Counted);
    public static HistoryCode JobTakenIn { get; } = New("job-taken-in", after: Counted);
    public static HistoryCode JobReleased { get; } = New("job-released");
    public static HistoryCode JobReleaseTakenBack { get; } = New("job-release-taken-back");
    public static HistoryCode JobTakenUpAgain { get; } = New("job-taken-up-again", after: line => Say("TakenUpWith", line.Number("waiting"), line.Number("made")));
    public static HistoryCode JobCancelled { get; } = New("job-cancelled", after: line => Say("CancelledWithSurplus", line.Number("surplus")));
    public static HistoryCode JobChanged { get; } = New("job-changed", before: CountedBefore, after: AfterChange);
    public static HistoryCode JobByRules { get; } = New("job-by-rules", before: CountedBefore, after: AfterChange);
    public static HistoryCode ScrewsPutIn { get; } = Worded("screws-put-in", line => Say("ScrewsPutIn", line.Number("screws")));
    public static HistoryCode ScrewsTakenOut { get; } = Worded("screws-taken-out", line => Say("ScrewsTakenOut", line.Number("screws")));
    public static HistoryCode HardwarePutIn { get; } = Worded("hardware-put-in", line => Say("HardwarePutIn", line.Number("hardware")));
    public static HistoryCode HardwareTakenOut { get; } = Worded("hardware-taken-out", line => Say("HardwareTakenOut", line.Number("hardware")));
    public static HistoryCode ParcelBegun { get; } = Worded("parcel-begun", line => Say("ParcelBegun", line.Number("parcel")));
    public static HistoryCode ParcelTakenBack { get; } = Worded("parcel-taken-back", line => Say("ParcelTakenBack", line.Number("parcel")));
    public static HistoryCode ReSettingDue { get; } = Worded(
        "re-setting-due", line => Say("ReSettingDue", IsoDate.Text(new((int)line.Number("year"), (int)line.Number("month"), (int)line.Number("day")))));
    public static HistoryCode ReSettingDone { get; } = New("re-setting-done");
    public static HistoryCode ParcelClosed { get; } = Worded("parcel-closed", ParcelClosedWords);
    public static HistoryCode ParcelOpened { get; } = New("parcel-opened");
    public static HistoryCode SitePackOpened { get; } = New("site-pack-opened");
    public static HistoryCode SitePackReplaced { get; } = New("site-pack-replaced");

    // Tickets of both benches.
    public static HistoryCode TakenToBench { get; } = New("taken-to-bench");
    public static HistoryCode TakenOver { get; } = New("taken-over", before: line => line.From, after: line => line.Who);
    public static HistoryCode HandedBack { get; } = New("handed-back");
    public static HistoryCode HandedBackUnused { get; } = Worded("handed-back-unused", line => Counted(line, "minutes", "HandedBackOneMinute", "HandedBackSomeMinutes"));
    public static HistoryCode Undone { get; } = New("undone");
    public static HistoryCode TicketCancelled { get; } = New("ticket-cancelled");
    public static HistoryCode NoLongerWanted { get; } = New("no-longer-wanted");
    public static HistoryCode WantedAgain { get; } = New("wanted-again");

    // Cut tickets.
    /// <summary>A step of the six that a piece was cut in before two pairs of them became one each.</summary>
    public static HistoryCode CutStepDone { get; } = Worded(
        "cut-step-done", line => Say($"CutStep{line.Number("step")}"), before: StepBefore, after: StepAfter);
    public static HistoryCode CutStepTapped { get; } = Worded("cut-step-tapped", line => Say("CutStepTapped", StepName(line)), before: StepBefore, after: StepAfter);
    public static HistoryCode CutStepScanned { get; } = Worded("cut-step-scanned", line => Say("CutStepScanned", StepName(line)), before: StepBefore, after: StepAfter);
    public static HistoryCode CutStepUndone { get; } = Worded("cut-step-undone", line => Say("CutStepUndone", StepName(line)));
    public static HistoryCode CoilScanned { get; } = Worded("coil-scanned", line => Say("CoilScanned", line.Text("coil")));
    public static HistoryCode MeasureTakenBack { get; } = Worded("measure-taken-back", line => Say("MeasureTakenBack", line.LengthOf("measured_nm")));
    public static HistoryCode CutMeasured { get; } = Worded("cut-measured", line => Say("CutMeasured", line.AfterLength), before: StepBefore, after: StepAfter);
    public static HistoryCode CutNotMeasured { get; } = Worded(
        "cut-not-measured", line => Say("CutNotMeasured", line.AfterLength), before: StepBefore, after: StepAfter);
    public static HistoryCode CutTooLong { get; } = New("cut-too-long");
    public static HistoryCode CutPutAside { get; } = New("cut-put-aside");
    public static HistoryCode CutFinished { get; } = New("cut-finished");
    public static HistoryCode CutRejected { get; } = New("cut-rejected");
    public static HistoryCode Packed { get; } = New("packed");
    public static HistoryCode Unpacked { get; } = New("unpacked");
    public static HistoryCode SurplusHungUp { get; } = New("surplus-hung-up");
    public static HistoryCode SurplusScrapped { get; } = New("surplus-scrapped");

    // Drill tickets.
    public static HistoryCode BoreDrilled { get; } = New("bore-drilled", before: DrilledBefore, after: DrilledAfter);
    public static HistoryCode ScrewHoleDrilled { get; } = New("screw-hole-drilled", before: DrilledBefore, after: DrilledAfter);
    public static HistoryCode PostDrilled { get; } = Worded("post-drilled", PostDrilledWords);
    public static HistoryCode DrillStepUndone { get; } = New("drill-step-undone", before: DrilledBefore, after: DrilledAfter);
    public static HistoryCode PostDrilledAlike { get; } = New("post-drilled-alike");
    public static HistoryCode PostNotSpoiled { get; } = New("post-not-spoiled");
    public static HistoryCode PostSpoiled { get; } = New("post-spoiled");
    public static HistoryCode PostPutIn { get; } = New("post-put-in");
    public static HistoryCode PostTakenOut { get; } = New("post-taken-out");
    public static HistoryCode NewPostHere { get; } = New("new-post-here");

    // Coils.
    public static HistoryCode CoilReceived { get; } = New("coil-received");
    public static HistoryCode OffcutHungUp { get; } = Worded("offcut-hung-up", line => Say("OffcutHungUp", line.Text("coil")));
    public static HistoryCode CutFrom { get; } = New("cut-from");
    public static HistoryCode CutFromPutAside { get; } = New("cut-from-put-aside");
    public static HistoryCode RestScrapped { get; } = New("rest-scrapped");
    public static HistoryCode RestHungUp { get; } = Worded("rest-hung-up", line => Say("RestHungUp", line.Text("offcut")));
    public static HistoryCode CutUndone { get; } = New("cut-undone");
    public static HistoryCode OffcutTakenDown { get; } = Worded("offcut-taken-down", line => Say("OffcutTakenDown", line.Text("coil")));
    public static HistoryCode CoilCorrected { get; } = New("coil-corrected");
    public static HistoryCode CoilRetired { get; } = New("coil-retired");
    public static HistoryCode CoilFound { get; } = New("coil-found");
    public static HistoryCode CoilPreshrunk { get; } = New("coil-preshrunk");
    public static HistoryCode PreshrinkingUndone { get; } = New("preshrinking-undone");
    public static HistoryCode SampleMeasured { get; } = Worded(
        "sample-measured", line => Say("SampleMeasured", line.LengthOf("before_nm"), line.LengthOf("after_nm")));
    public static HistoryCode SampleTakenBack { get; } = Worded(
        "sample-taken-back", line => Say("SampleTakenBack", line.LengthOf("before_nm"), line.LengthOf("after_nm")));
    public static HistoryCode BadStretchCutOut { get; } = New("bad-stretch-cut-out");
    public static HistoryCode BadStretchTakenBack { get; } = New("bad-stretch-taken-back");

    // Cut plans.
    public static HistoryCode PlanDrafted { get; } = New("plan-drafted");
    public static HistoryCode PlanAccepted { get; } = New("plan-accepted");
    public static HistoryCode PlanReplaced { get; } = Worded("plan-replaced", line => Say("PlanReplaced", line.Number("plan")));

    // Pieces and reports from site.
    public static HistoryCode PieceMarked { get; } = New("piece-marked");
    public static HistoryCode SpanMeasured { get; } = Worded("span-measured", line => Say("SpanMeasured", line.Number("section")));
    public static HistoryCode BoreTicked { get; } = Worded("bore-ticked", line => Say("BoreTicked", line.Text("row"), line.Number("bore")));
    public static HistoryCode LabelReplaced { get; } = New("label-replaced");
    public static HistoryCode PieceCutAgain { get; } = New("piece-cut-again");
    public static HistoryCode ReportSent { get; } = New("report-sent");
    public static HistoryCode ReportCutAgain { get; } = New("report-cut-again");
    public static HistoryCode ReportClosed { get; } = New("report-closed");

    // The order desk.
    public static HistoryCode DraftStarted { get; } = New("draft-started");
    public static HistoryCode DraftDropped { get; } = New("draft-dropped");
    public static HistoryCode DraftReopened { get; } = New("draft-reopened");
    public static HistoryCode DraftTakenIn { get; } = New("draft-taken-in");
    public static HistoryCode QuoteMade { get; } = New("quote-made", after: line => Money.FromTenThousandths(line.Number("total_e4")).ToString());
    public static HistoryCode QuoteAccepted { get; } = New("quote-accepted");
    public static HistoryCode PriceListKept { get; } = New("price-list-kept");
    public static HistoryCode CurrencySet { get; } = New("currency-set");

    // What the shop sets for itself.
    public static HistoryCode SettingSet { get; } = Worded("setting-set", line => Say("SettingSet", line.Text("setting")));
    public static HistoryCode BitHungUp { get; } = New("bit-hung-up", after: line => BitName(line.AfterLength!.Value, line.After));
    public static HistoryCode BitTakenOff { get; } = New("bit-taken-off", before: line => BitName(line.BeforeLength!.Value, line.Before));

    // People, tablets and keys.
    public static HistoryCode PersonAdded { get; } = New("person-added");
    public static HistoryCode RoleChanged { get; } = New("role-changed");
    public static HistoryCode PasswordSet { get; } = New("password-set");
    public static HistoryCode PinSet { get; } = New("pin-set");
    public static HistoryCode PinRemoved { get; } = New("pin-removed");
    public static HistoryCode PersonSwitchedOn { get; } = New("person-switched-on");
    public static HistoryCode PersonSwitchedOff { get; } = New("person-switched-off");
    public static HistoryCode UnitsChosen { get; } = New("units-chosen", before: line => Units(line.Before), after: line => Units(line.After));
    public static HistoryCode SignInLocked { get; } = New("sign-in-locked", after: line => Counted(line, "minutes", "ForOneMinute", "ForSomeMinutes"));
    public static HistoryCode TabletEnrolled { get; } = New("tablet-enrolled");
    public static HistoryCode TabletRemoved { get; } = New("tablet-removed");
    public static HistoryCode KeyMade { get; } = New("key-made");
    public static HistoryCode KeyRevoked { get; } = New("key-revoked");

    /// <summary>What an older program wrote in words that no code has: the words are kept as they were.</summary>
    public static HistoryCode Other { get; } = Worded("other", line => line.Text("words"));

    /// <summary>All codes.</summary>
    public static IReadOnlyCollection<HistoryCode> All => Known.Values;

    /// <summary>The code of a text; one that is not known here, which a newer program wrote, is shown as it is.</summary>
    public static HistoryCode Find(string code) => Known.TryGetValue(code, out var known) ? known : new(code, _ => code);

    /// <summary>A code that is shown by the words of its property's name, always the same.</summary>
    private static HistoryCode New(
        string code, Func<HistoryEntry, string>? before = null, Func<HistoryEntry, string>? after = null, [CallerMemberName] string key = "") =>
        Worded(code, _ => Say(key), before, after);

    private static HistoryCode Worded(
        string code, Func<HistoryEntry, string> what, Func<HistoryEntry, string>? before = null, Func<HistoryEntry, string>? after = null)
    {
        var made = new HistoryCode(code, what, before, after);
        Known.Add(code, made);
        return made;
    }

    private static string AfterChange(HistoryEntry line) => Say(
        "AfterChange",
        Counted(line),
        line.Number("pieces_added"),
        line.Number("pieces_changed"),
        line.Number("pieces_gone"),
        line.Number("posts_added"),
        line.Number("posts_changed"),
        line.Number("posts_gone"),
        line.Number("surplus"));

    private static string ParcelClosedWords(HistoryEntry line) => line.Number("posts") + line.Number("screws") == 0
        ? Say("ParcelClosed")
        : Say("ParcelClosedWithout", line.Number("posts"), line.Number("screws"));

    private static string Counted(HistoryEntry line) => Say("Counted", line.Number("pieces"), line.Number("bores"));

    private static string CountedBefore(HistoryEntry line) => Say("Counted", line.Number("pieces_before"), line.Number("bores_before"));

    private static string Counted(HistoryEntry line, string name, string one, string some) =>
        line.Number(name) is var number && number == 1 ? Say(one) : Say(some, number);

    private static string StepName(HistoryEntry line) => Say($"StepOfFour{line.Number("step")}");

    private static string StepBefore(HistoryEntry line) => Say("StepOf", line.Number("step_before"), line.Number("steps"));

    private static string StepAfter(HistoryEntry line) => Say("StepOf", line.Number("step"), line.Number("steps"));

    private static string DrilledBefore(HistoryEntry line) => Say("DrilledOf", line.Number("drilled_before"), line.Number("drillings"));

    private static string DrilledAfter(HistoryEntry line) => Say("DrilledOf", line.Number("drilled"), line.Number("drillings"));

    /// <summary>With it are the screw holes that were not ticked one by one.</summary>
    private static string PostDrilledWords(HistoryEntry line) => line.Number("screw_holes") == 0
        ? Say("PostDrilled")
        : Counted(line, "screw_holes", "PostDrilledOneHole", "PostDrilledSomeHoles");

    private static string BitName(Length diameter, string kind) => $"{LengthText.Brief(diameter)} {kind}";

    private static string Units(string code) => code.Replace('-', ' ');
}
