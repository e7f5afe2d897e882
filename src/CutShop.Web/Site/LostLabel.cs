namespace CutShop.Web.Site;

/// <summary>Why a label's address leads to no piece.</summary>
/// <param name="Typed">The code as it was typed or scanned.</param>
/// <param name="Problem">What is wrong with it, in the reader's language.</param>
/// <param name="Status">404 where no piece has it, 410 where the label is no longer valid.</param>
public sealed record LostLabel(string Typed, string Problem, int Status);
