using CutShop.Paper.Drawings;
using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;

using static CutShop.Web.Benches.BenchWords;

namespace CutShop.Web.Benches;

/// <summary>What a driller changes on the drill before a step: bits a sixteenth of an inch apart look alike, so a change is announced.</summary>
public static class DrillChanges
{
    /// <summary>The changes in words; none where the drill is set up for the step already.</summary>
    /// <param name="step">The step.</param>
    /// <param name="before">The last step of the same sort that this person drilled, bores or screw holes; null where nobody knows what is on the drill.</param>
    /// <param name="post">The post.</param>
    /// <param name="paper">Units and words.</param>
    public static IEnumerable<string> Before(DrillStep step, DrillStep? before, PostWork post, PaperSettings paper)
    {
        ArgumentNullException.ThrowIfNull(step);
        return step.Drillings is [var drilling, ..]
            ? BeforeBores(drilling, before?.Drillings[^1], post, paper)
            : BeforeScrewHoles(step.ScrewHoles[0], before?.ScrewHoles[^1], paper);
    }

    private static IEnumerable<string> BeforeBores(Drilling now, Drilling? was, PostWork post, PaperSettings paper)
    {
        var (text, figures) = (paper.Text, paper.Figures);
        var kind = text.BitKindName(now.Bore.BitChoice.Kind);
        if (was is null)
            yield return T["FitBit", figures.ToTheTenth().Lead(now.Bore.Bit), kind];
        else if ((was.Bore.Bit, was.Bore.BitChoice.Kind) != (now.Bore.Bit, now.Bore.BitChoice.Kind))
            yield return T["ChangeBit", figures.ToTheTenth().Lead(was.Bore.Bit), figures.ToTheTenth().Lead(now.Bore.Bit), kind];
        if (was is null)
            yield return T["SetCollar", figures.Lead(now.Collar)];
        else if (was.Collar != now.Collar)
            yield return T["ChangeCollar", figures.Lead(was.Collar), figures.Lead(now.Collar)];
        if (was is null ? now.Bore.IsRaked : was.Bore.RakeDegrees != now.Bore.RakeDegrees)
            yield return T["SetBevel", RakeText.Of(now.Bore, post, paper)];
        if (RakeText.SkewOf(post, now.Operation.Face, now.Bore, paper) is { } skew && (was is null || was.Bore.SkewDegrees != now.Bore.SkewDegrees || was.Operation.Face != now.Operation.Face))
            yield return skew;
    }

    private static IEnumerable<string> BeforeScrewHoles(Fixing now, Fixing? was, PaperSettings paper)
    {
        var (text, figures) = (paper.Text, paper.Figures);
        if (now.Pilot.IsPositive && now.Pilot != was?.Pilot)
            yield return was is { Pilot.IsPositive: true } ? T["ChangePilot", figures.Lead(was.Pilot), figures.Lead(now.Pilot)] : T["FitPilot", figures.Lead(now.Pilot)];
        if (now.Counterbore.IsPositive && (now.Counterbore, now.IsCountersunk) != (was?.Counterbore ?? Length.Zero, was?.IsCountersunk ?? false))
            yield return T["FitHeadBit", text.HeadHole(now), figures.Lead(now.Counterbore)];
    }
}
