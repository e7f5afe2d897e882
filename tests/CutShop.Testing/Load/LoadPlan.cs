namespace CutShop.Testing.Load;

/// <summary>How many work how fast and how long.</summary>
/// <param name="Tablets">Tablets at the cut bench, each with a cutter of its own.</param>
/// <param name="Phones">Installers' phones.</param>
/// <param name="Duration">How long.</param>
/// <param name="BetweenTaps">How long a cutter takes from an answer to the next tap.</param>
/// <param name="BetweenPages">How long an installer takes from a page to the next.</param>
internal sealed record LoadPlan(int Tablets, int Phones, TimeSpan Duration, TimeSpan BetweenTaps, TimeSpan BetweenPages)
{
    /// <summary>Requests from one piece's claim to the next.</summary>
    private const int RequestsAPiece = 9;

    /// <summary>More pieces than can be cut in that time.</summary>
    public int Pieces => Tablets * (2 + (int)(Duration / BetweenTaps / RequestsAPiece));
}
