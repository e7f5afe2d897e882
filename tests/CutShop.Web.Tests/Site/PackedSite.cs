using SkiaSharp;

namespace CutShop.Web.Tests.Site;

/// <summary>A job's site pack in a running shop, and what has come in of it.</summary>
internal static class PackedSite
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    /// <summary>The code of a job's pack.</summary>
    public static async Task<PieceCode> PackOfAsync(this RunningShop shop, StoredJob job) =>
        (await new SitePackShelf(shop.Database).CodeOfAsync(job.Number, "test", Cancel))!.Value;

    /// <summary>What installers did, in the order in which the shop has it.</summary>
    public static IReadOnlyList<string> FromSite(this RunningShop shop) => shop.Database.Read(session => session.All<string>(
        """
        SELECT coalesce(pieces.run, reported.run) || ' ' || after FROM history
        LEFT JOIN pieces ON subject = 'piece' AND pieces.id = subject_id
        LEFT JOIN site_reports ON subject = 'site report' AND site_reports.id = subject_id
        LEFT JOIN pieces AS reported ON reported.id = site_reports.piece_id
        WHERE subject IN ('piece', 'site report') ORDER BY history.id
        """));

    /// <summary>Marks a piece at once, as somebody else on site would.</summary>
    public static async Task MarkAsync(this RunningShop shop, PieceCode code, InstalledState wanted)
    {
        var seen = wanted == InstalledState.Installed ? InstalledState.NotInstalled : InstalledState.Installed;
        var answer = await new InstalledMarks(shop.Database).MarkAsync(code, new(wanted, seen, At: null, IsSure: true), "somebody else", Guid.NewGuid().ToString("N"), Cancel);
        Assert.Equal(SiteOutcome.Done, answer.Outcome);
    }

    /// <summary>A small photo.</summary>
    public static byte[] Photo()
    {
        using var bitmap = new SKBitmap(64, 48);
        bitmap.Erase(SKColors.SandyBrown);
        using var png = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return png.ToArray();
    }
}
