using CutShop.Paper.Drawings;
using CutShop.Paper.Words;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;

namespace CutShop.Paper.Installing;

/// <summary>The steps of hanging a piece, in words: for pages and sheets alike.</summary>
public static class InstallLines
{
    /// <summary>The steps in order.</summary>
    /// <param name="takeoff">The job's takeoff.</param>
    /// <param name="piece">A piece of it.</param>
    /// <param name="settings">Units and words.</param>
    public static IReadOnlyList<InstallLine> Of(JobTakeoff takeoff, Piece piece, PaperSettings settings)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(settings);
        var (text, figures) = (settings.Text, settings.Figures);
        var loose = text.WettingOfTurns(piece);
        return
        [
            .. Installation.StepsOf(takeoff, piece).SelectMany(step => step switch
            {
                SoakStep => text.WettingBeforeHanging(piece).Select(said => new InstallLine(said, Screws: null)),
                TrimStep => text.WettingBeforeLastEnd(piece, figures.Both) is { } trim ? [new(trim, Screws: null)] : [],
                WrapStep or EndStep { At.Kind: AtPostKind.Wrap } when loose is not null => [new($"{Words(step, settings)} {loose}", Screws(step, settings))],
                _ => (InstallLine[])[new(Words(step, settings), Screws(step, settings))],
            }),
        ];
    }

    /// <summary>How a piece that hangs on pins is unhooked and hooked, and that it is no barrier; null for any other.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="text">The words.</param>
    public static string? Gate(Piece piece, PaperText text)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(text);
        var posts = piece.AtPosts.Where(at => at.Kind == AtPostKind.Eye).Select(at => at.Post.Mark).ToList();
        return posts.Count == 0 ? null : $"{text["GateOpens", string.Join(", ", posts)]} {text.GateCautions[0]}";
    }

    /// <summary>Screws with their holes, on one line.</summary>
    /// <param name="fixing">The screws.</param>
    /// <param name="settings">Units and words.</param>
    /// <param name="datum">Where their height is measured from.</param>
    /// <param name="work">The post, for whoever drills their holes: how they lie in it is written too.</param>
    public static string ScrewsOf(Fixing fixing, PaperSettings settings, Datum datum = Datum.Ground, PostWork? work = null)
    {
        ArgumentNullException.ThrowIfNull(fixing);
        ArgumentNullException.ThrowIfNull(settings);
        var (text, figures) = (settings.Text, settings.Figures);
        var parts = new List<string>
        {
            $"{Figures.Count(fixing.Count)} × {text.Holder(fixing.Driven, figures.Both(fixing.Length))}",
            text.FaceName(fixing.Face),
            text.HeightOn(fixing.Post, datum, fixing.Mark, figures.Both),
        };
        if (work is not null)
            parts.AddRange(RakeText.HolesOf(fixing, work, settings));
        if (fixing.Pilot != Length.Zero)
            parts.Add(text["PilotHole", figures.Both(fixing.Pilot)] + (fixing.Purpose == FixingPurpose.Wrap ? "" : $", {text["Deep", figures.Both(fixing.PilotDepth)]}"));
        if (fixing.ShankHole != Length.Zero)
            parts.Add(text["ShankHole", figures.Both(fixing.ShankHole)] + (fixing.Purpose == FixingPurpose.Wrap || !fixing.ShankDepth.IsPositive ? "" : $", {text["Deep", figures.Both(fixing.ShankDepth)]}"));
        if (fixing.Screw is not null)
            parts.Add(HeadOf(fixing, text, figures));
        return string.Join(" · ", parts);
    }

    private static string HeadOf(Fixing fixing, PaperText text, Figures figures) =>
        fixing.Purpose == FixingPurpose.Wrap ? text["HeadInTheRope"]
        : fixing.IsCountersunk ? text["CountersunkFlush", figures.Both(fixing.Counterbore)]
        : text["Counterbored", figures.Both(fixing.Counterbore), figures.Both(fixing.CounterboreDepth)];

    private static string Words(InstallStep step, PaperSettings settings)
    {
        var text = settings.Text;
        return step switch
        {
            LayOutStep lay => text[lay.FinishTakesUp ? "LayOutTakesUp" : "LayOut", lay.Start.Mark, lay.Finish.Mark],
            FirstRopeStep first => text["FirstRopeIsIn", first.Corner.Mark, first.FirstRun],
            EndStep end => EndWords(end, text, settings.Figures),
            ThreadStep thread => text["PassThrough", string.Join(", ", thread.Posts.Select(post => post.Mark))],
            SagStep { Section: { DrySag: { } dry } section } => text[
                "SetDrySag",
                section.From.Mark,
                section.To.Mark,
                settings.Figures.Both(dry),
                section.Sag == Length.Zero ? text["Straight"] : settings.Figures.Both(section.Sag)],
            SagStep { Section: { } section } when section.Sag == Length.Zero => text["PullStraight", section.From.Mark, section.To.Mark],
            SagStep { Section: { } section } => text["SetSag", section.From.Mark, section.To.Mark, settings.Figures.Both(section.Sag)],
            LineScrewStep { Fixing.Purpose: FixingPurpose.Beside } beside => text["HoldBeside", beside.Post.Mark],
            LineScrewStep screw => text["DriveLineScrew", screw.Post.Mark],
            WrapStep wrap => WindRound(wrap.At, wrap.Way, text),
            _ => throw new ArgumentOutOfRangeException(nameof(step), step, message: null),
        };
    }

    private static string EndWords(EndStep end, PaperText text, Figures figures)
    {
        var post = end.At.Post.Mark;
        return end.At.Kind switch
        {
            AtPostKind.Stopped => text[end.IsStart ? "FirstEndInBore" : "LastEndInBore", post],
            AtPostKind.Corner when end.Fixing!.Purpose == FixingPurpose.CornerFirst => text["FirstAtCorner", post],
            AtPostKind.Corner => text["SecondAtCorner", post],
            AtPostKind.Knot => text[end.IsStart ? "TieFirstKnot" : "TieLastKnot", post, end.Inner.Mark],
            AtPostKind.Wrap => WindRound(end.At, end.Way, text),
            AtPostKind.Join => text[end.IsStart ? "FirstEndInJoin" : "LastEndInJoin", post],
            AtPostKind.Eye when end.Splice is { } splice => text.SpliceOnSite(end.At, splice, figures),
            AtPostKind.Eye => text[end.IsStart ? "FirstEye" : "LastEye", post],
            _ => throw new ArgumentOutOfRangeException(nameof(end), end.At.Kind, message: null),
        };
    }

    private static string WindRound(AtPost at, WrapWay? way, PaperText text) => text[
        "WindRound",
        at.Post.Mark,
        text[at.Treatment.Turns == 1 ? "OneTurn" : "SomeTurns", at.Treatment.Turns],
        text[way == WrapWay.Clockwise ? "Clockwise" : "CounterClockwise"]];

    private static string? Screws(InstallStep step, PaperSettings settings)
    {
        var fixing = step switch
        {
            EndStep end => end.Fixing,
            LineScrewStep line => line.Fixing,
            WrapStep wrap => wrap.Fixing,
            _ => null,
        };
        return fixing is null ? null : ScrewsOf(fixing, settings);
    }
}
