namespace CutShop.Shop.Store;

/// <summary>The words of <see cref="CutStep"/> as the bench and the history show them, in English.</summary>
public static class CutStepWords
{
    /// <summary>A step in a few words.</summary>
    public static string Of(CutStep step) => step switch
    {
        CutStep.PullAndMark => "pull and mark",
        CutStep.PrepareEnds => "prepare the ends",
        CutStep.Cut => "cut",
        CutStep.Measure => "measure",
        CutStep.Label => "label",
        CutStep.CoilAndTie => "coil and tie",
        _ => throw new ArgumentOutOfRangeException(nameof(step), step, message: null),
    };
}
