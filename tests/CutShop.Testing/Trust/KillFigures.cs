namespace CutShop.Testing.Trust;

/// <summary>What a run of kills came to.</summary>
/// <param name="Kills">How often the server was killed.</param>
/// <param name="Acknowledged">Writes that were acknowledged.</param>
/// <param name="SentAgain">Requests that got no answer and were sent again.</param>
/// <param name="Cut">Pieces cut at the end.</param>
/// <param name="Drilled">Posts drilled at the end.</param>
/// <param name="Plans">Plans accepted.</param>
/// <param name="Jobs">Jobs taken in.</param>
/// <param name="Lost">Acknowledged changes that were not in the database after a kill.</param>
/// <param name="Findings">What the check found off after a kill.</param>
/// <param name="Faults">Answers that no client should get: refusals of what must be done, errors.</param>
internal sealed record KillFigures(
    int Kills,
    long Acknowledged,
    long SentAgain,
    long Cut,
    long Drilled,
    long Plans,
    long Jobs,
    IReadOnlyList<string> Lost,
    IReadOnlyList<string> Findings,
    IReadOnlyList<string> Faults);
