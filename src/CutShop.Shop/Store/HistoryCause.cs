namespace CutShop.Shop.Store;

/// <summary>Why the program itself did something: a code, and the words of <see cref="HistoryWords"/> that are made of it when somebody reads the line.</summary>
internal sealed class HistoryCause
{
    private static readonly Dictionary<string, HistoryCause> Known = [];

    private HistoryCause(string code, Func<HistoryEntry, string> words) => (Code, Words) = (code, words);

    /// <summary>The job changed, and what the ticket is for is no longer wanted.</summary>
    public static HistoryCause JobChanged { get; } = New("job-changed", _ => HistoryWords.Say("BecauseJobChanged"));

    /// <summary>The coil was not whole when it came in.</summary>
    public static HistoryCause OpenedBefore { get; } = New("opened-before", _ => HistoryWords.Say("BecauseOpenedBefore"));

    /// <summary>The coil was measured before it was soaked, and its books said otherwise.</summary>
    public static HistoryCause MeasuredBeforeSoaking { get; } = New("measured-before-soaking", _ => HistoryWords.Say("BecauseMeasuredBeforeSoaking"));

    /// <summary>The piece was cut too short.</summary>
    public static HistoryCause Short { get; } = New("short", line => HistoryWords.Say("BecauseShort", line.LengthOf("short_nm")));

    /// <summary>The coil ended before its books said so.</summary>
    public static HistoryCause CoilEnded { get; } = New("coil-ended", _ => HistoryWords.Say("BecauseCoilEnded"));

    /// <summary>The coil is not where it hangs.</summary>
    public static HistoryCause CoilNotFound { get; } = New("coil-not-found", _ => HistoryWords.Say("BecauseCoilNotFound"));

    /// <summary>A bad stretch was cut out of the coil, and what is left is too short for the piece.</summary>
    public static HistoryCause BadStretch { get; } = New("bad-stretch", _ => HistoryWords.Say("BecauseBadStretch"));

    /// <summary>What was said of a coil was a slip, and is taken back.</summary>
    public static HistoryCause Slip { get; } = New("slip", _ => HistoryWords.Say("BecauseSlip"));

    /// <summary>Too many wrong tries to sign in.</summary>
    public static HistoryCause WrongTries { get; } = New("wrong-tries", line => HistoryWords.Say("BecauseWrongTries", line.Number("tries"), line.Text("way")));

    /// <summary>A backup was restored, and what had been shut since it was made stays shut.</summary>
    public static HistoryCause BeforeRestore { get; } = New("before-restore", _ => HistoryWords.Say("BecauseBeforeRestore"));

    private static Dictionary<string, HistoryCause> ByReport { get; } =
        SiteReportWords.All.ToDictionary(pair => pair.Word, pair => New($"on-site-{pair.Word}", _ => OnSiteWords(pair.Word)));

    /// <summary>All causes.</summary>
    public static IReadOnlyCollection<HistoryCause> All => Known.Values;

    /// <summary>What is stored: lower-case words with hyphens.</summary>
    public string Code { get; }

    /// <summary>The cause in words.</summary>
    public Func<HistoryEntry, string> Words { get; }

    /// <summary>The cause of a code; one that is not known here, which a newer program wrote, is shown as it is.</summary>
    public static HistoryCause Find(string code) => Known.TryGetValue(code, out var cause) ? cause : new(code, _ => code);

    /// <summary>A report from site.</summary>
    /// <param name="kind">The word of its kind.</param>
    public static HistoryCause OnSite(string kind) => ByReport[kind];

    /// <summary>A report from site in words.</summary>
    public static string OnSiteWords(string kind) => HistoryWords.Say("BecauseOnSite", SiteReportWords.Said(kind));

    private static HistoryCause New(string code, Func<HistoryEntry, string> words)
    {
        var cause = new HistoryCause(code, words);
        Known.Add(code, cause);
        return cause;
    }
}
