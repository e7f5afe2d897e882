using CutShop.Takeoff.Result;

namespace CutShop.Paper.Words;

/// <content>The steps of the work, and its dangers.</content>
public sealed partial class PaperText
{
    /// <summary>The dangers of cutting rope that melts.</summary>
    public IReadOnlyList<string> CuttingSyntheticCautions => All("HotKnifeBurns", "MeltingRopeFumes", "HotKnifeFire");

    /// <summary>The dangers of cutting rope that grew.</summary>
    public IReadOnlyList<string> CuttingNaturalCautions => All("NaturalFibreIsCutCold", "StrandsSpringOpen", "FibreDust");

    /// <summary>The dangers of drilling with large bits.</summary>
    public IReadOnlyList<string> DrillingCautions => All("LargeBitSticks", "EyeProtection", "TreatedTimber");

    /// <summary>The limits of the finished railing.</summary>
    public IReadOnlyList<string> RailingCautions => All("NoGuard");

    /// <summary>How an end is prepared, by the rope's fibre and by what the end does at its post.</summary>
    public string EndPreparation(bool natural, AtPostKind kind)
    {
        var then = kind switch
        {
            AtPostKind.Stopped or AtPostKind.Corner or AtPostKind.Join => natural ? "EndBindingEntersBore" : "EndRimEntersBore",
            AtPostKind.Knot => "EndHasKnotTail",
            AtPostKind.Wrap => "EndHasTurns",
            AtPostKind.Eye => natural ? "EndHasEyeNatural" : "EndHasEye",
            _ => null,
        };
        var cut = this[natural ? "EndCutCold" : "EndCutHot"];
        return then is null ? cut : $"{cut} {this[then]}";
    }

    /// <summary>The steps of cutting a piece.</summary>
    public IReadOnlyList<string> CuttingSteps(bool natural, string cutLength, bool hasCode) =>
    [
        this["StepPullOff", cutLength],
        this[natural ? "StepBindMark" : "StepTapeMark"],
        this[natural ? "StepCutCold" : "StepCutHot"],
        this["StepMeasureAgain"],
        this[hasCode ? "StepLabel" : "StepTag"],
        this["StepCoilUp"],
    ];

    /// <summary>The steps of drilling a post.</summary>
    public IReadOnlyList<string> DrillingSteps(PostWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        var drilled = work.Bores.Where(bore => !bore.IsExisting).ToList();
        return All(
        [
            "StepMarkFaces",
            "StepClampPost",
            .. When(work.Bores.Any(bore => bore.IsExisting), "StepAlreadyThere"),
            .. When(drilled.Any(bore => bore.Operations.Count > 1), "StepBothFaces"),
            .. When(drilled.Any(bore => bore.IsRaked), "StepRakedBore"),
            .. When(drilled.Any(bore => bore.SkewDegrees > 0), "StepSkewedBore"),
            .. When(drilled.Any(bore => bore.KinkDegrees > 0), "StepBoreThroughCorner"),
            .. work.ScrewHoles.Select(HoleOrder).Distinct(),
            .. When(work.ScrewHoles.Any(hole => hole.IsRaked), "StepRakedPilot"),
            "BrushTheCut",
            "StepClearChips",
        ]);
    }

    /// <summary>
    /// What is done to every cut in treated wood, which posts are unless somebody says otherwise: cuts and holes through the treated zone are
    /// treated again. Source: AWPA M4, section 6.
    /// </summary>
    public string BrushTheCut => this["BrushTheCut"];

    private static IEnumerable<string> When(bool isSo, string key) => isSo ? [key] : [];

    /// <summary>In which order the pilot of a screw and the hole for its head are drilled.</summary>
    public string OrderOfHoles(Fixing fixing) => this[HoleOrder(fixing)];

    private static string HoleOrder(Fixing fixing) =>
        !fixing.IsCountersunk ? "CounterboreThenPilot" : fixing.Pilot.IsPositive ? "PilotThenCountersink" : "CountersinkOnly";
}
