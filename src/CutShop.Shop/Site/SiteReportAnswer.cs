namespace CutShop.Shop.Site;

/// <summary>The answer to a report from site.</summary>
/// <param name="Outcome">How it went.</param>
/// <param name="Id">The report where it is stored, else 0.</param>
public sealed record SiteReportAnswer(SiteOutcome Outcome, long Id);
