namespace CutShop.Benchmarks.Trust;

/// <summary>A row of the table of trust: what was done to the program, how often, and what came of it.</summary>
/// <param name="What">What was done.</param>
/// <param name="HowMuch">How often, with what else was counted.</param>
/// <param name="Lost">Acknowledged changes lost, or other harm: zero is the target.</param>
/// <param name="Harm">What harm came, in words; empty where there was none.</param>
internal sealed record TrustRow(string What, string HowMuch, long Lost, IReadOnlyList<string> Harm);
