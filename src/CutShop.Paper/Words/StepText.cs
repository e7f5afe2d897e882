using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;

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

    /// <summary>What to know of a rope that is unhooked to let people through.</summary>
    public IReadOnlyList<string> GateCautions => All("GateIsNoBarrier");

    /// <summary>How an end is prepared, by the rope's fibre and by what the end does at its post.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="at">Its start or its finish.</param>
    public string EndPreparation(Piece piece, AtPost at)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(at);
        var natural = piece.Rope.IsNatural;
        var then = at.Kind switch
        {
            AtPostKind.Stopped or AtPostKind.Corner or AtPostKind.Join => natural ? "EndBindingEntersBore" : "EndRimEntersBore",
            AtPostKind.Knot => "EndHasKnotTail",
            AtPostKind.Wrap => "EndHasTurns",
            AtPostKind.Eye => IsSplicedOnSite(piece, at) ? "EndEyeOnSite" : "EndHasEye",
            _ => null,
        };
        var cut = this[natural ? "EndCutCold" : "EndCutHot"];
        return then is null ? cut : $"{cut} {this[then]}";
    }

    /// <summary>The eyes at a piece's ends that the shop splices, and how.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="figures">Writes lengths.</param>
    public IEnumerable<(string Caption, IReadOnlyList<string> Steps)> Splices(Piece piece, Figures figures)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return ((AtPost[])[piece.AtPosts[0], piece.AtPosts[^1]])
            .Where(at => at.Kind == AtPostKind.Eye && !IsSplicedOnSite(piece, at))
            .Select(at => (this["SpliceAt", at.Post.Mark], SpliceSteps(piece, at, figures)));
    }

    /// <summary>How an eye is spliced on site, on one line: its marks are measured from where the pin comes, since the rope is through its bores.</summary>
    /// <param name="at">The eye.</param>
    /// <param name="splice">Its splice.</param>
    /// <param name="figures">Writes lengths.</param>
    public string SpliceOnSite(AtPost at, EyeSplice splice, Figures figures)
    {
        ArgumentNullException.ThrowIfNull(at);
        ArgumentNullException.ThrowIfNull(splice);
        return this[
            "SpliceNow",
            at.Post.Mark,
            figures.Both(at.Treatment.Eye!.Throat),
            figures.Both(splice.Throat - splice.Unlay),
            splice.Tucks,
            figures.Both(splice.Tail),
            splice.Taper];
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

    /// <summary>The steps of boring posts by hand where they stand.</summary>
    public IReadOnlyList<string> SiteDrillingSteps(IReadOnlyList<PostWork> posts)
    {
        var bores = posts.SelectMany(work => work.Bores).ToList();
        var bored = bores.Where(bore => !bore.IsExisting).ToList();
        return All(
        [
            .. When(bores.Count > bored.Count, "SiteStepExisting"),
            .. When(bored.Count > 0, "SiteStepMark"),
            .. When(bored.Count > 0, "SiteStepGuide"),
            .. When(bored.Any(bore => bore.IsRaked), "SiteStepRake"),
            .. When(bored.Any(bore => bore.Operations.Count > 1), "SiteStepBothFaces"),
            .. When(bored.Any(bore => bore.Operations.Count == 1), "SiteStepStopped"),
            .. posts.SelectMany(work => work.ScrewHoles).Select(HoleOrder).Distinct(),
            "BrushTheCut",
            "SiteStepTick",
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

    /// <summary>True for the eye of a piece that is spliced once its rope is through the bores.</summary>
    private static bool IsSplicedOnSite(Piece piece, AtPost at) => ReferenceEquals(at, piece.AtPosts[^1]) && EyeSplice.OneIsMadeOnSite(piece);

    private IReadOnlyList<string> SpliceSteps(Piece piece, AtPost at, Figures figures)
    {
        var (eye, splice) = (at.Treatment.Eye!, EyeSplice.At(piece, at)!);
        return
        [
            this["SpliceMark", figures.Both(splice.Unlay), figures.Both(splice.Throat)],
            this["SpliceUnlay"],
            this[eye.Thimble is null ? "SpliceTurn" : "SpliceTurnThimble", figures.Both(eye.Round), figures.Both(eye.Throat)],
            this["SpliceTuck", splice.Tucks],
            this["SpliceTaper", figures.Both(splice.Tail), splice.Taper],
            this[piece.Rope.IsNatural ? "SpliceWhip" : "SpliceSeal"],
        ];
    }

    private static string HoleOrder(Fixing fixing) =>
        !fixing.IsCountersunk ? "CounterboreThenPilot" : fixing.Pilot.IsPositive ? "PilotThenCountersink" : "CountersinkOnly";
}
