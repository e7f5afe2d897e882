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

    /// <summary>The dangers of drilling by hand at posts that stand.</summary>
    public IReadOnlyList<string> SiteDrillingCautions => All("HandDrillKicks", "EyeProtection", "TreatedTimber", "MindWhatIsThere");

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
        return All(
        [
            "StepMarkFaces",
            "StepClampPost",
            .. work.Bores.Any(bore => bore.Operations.Count > 1) ? ["StepBothFaces"] : (string[])[],
            .. work.Bores.Any(bore => bore.IsRaked) ? ["StepRakedBore"] : (string[])[],
            .. work.ScrewHoles.Select(HoleOrder).Distinct(),
            "StepClearChips",
        ]);
    }

    /// <summary>The steps of boring posts by hand where they stand.</summary>
    public IReadOnlyList<string> SiteDrillingSteps(IReadOnlyList<PostWork> posts)
    {
        var bores = posts.SelectMany(work => work.Bores).ToList();
        var bored = bores.Where(bore => !bore.IsExisting).ToList();
        return All(
        [
            .. bores.Count > bored.Count ? ["SiteStepExisting"] : (string[])[],
            .. bored.Count > 0 ? ["SiteStepMark", "SiteStepGuide"] : (string[])[],
            .. bored.Any(bore => bore.IsRaked) ? ["SiteStepRake"] : (string[])[],
            .. bored.Any(bore => bore.Operations.Count > 1) ? ["SiteStepBothFaces"] : (string[])[],
            .. bored.Any(bore => bore.Operations.Count == 1) ? ["SiteStepStopped"] : (string[])[],
            .. posts.SelectMany(work => work.ScrewHoles).Select(HoleOrder).Distinct(),
            "BrushTheCut",
            "SiteStepTick",
        ]);
    }

    /// <summary>In which order the pilot of a screw and the hole for its head are drilled.</summary>
    public string OrderOfHoles(Fixing fixing) => this[HoleOrder(fixing)];

    private static string HoleOrder(Fixing fixing) =>
        !fixing.IsCountersunk ? "CounterboreThenPilot" : fixing.Pilot.IsPositive ? "PilotThenCountersink" : "CountersinkOnly";
}
