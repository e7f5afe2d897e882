using CutShop.Testing.Jobs;
using CutShop.Testing.Museum;
using CutShop.Testing.Stores;

namespace CutShop.Shop.Tests.Museum;

/// <summary>What earlier releases left is opened, checked well, and worked on.</summary>
public sealed class MuseumTests
{
    private const string AskedToWork = "LQ-2003";

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static TheoryData<string> Releases => [.. MuseumShop.Releases];

    public static TheoryData<string> ReleasesOnServer => [.. MuseumShop.ReleasesOnServer];

    [Theory]
    [MemberData(nameof(Releases))]
    public void A_shop_in_a_file_is_brought_up_to_date_and_checks_well(string release)
    {
        using var shop = MuseumShop.InFile(release);
        shop.Place.Open(shop.Clock).Dispose();
        Assert.Empty(ShopCheck.Of(shop.Place, shop.Clock));
    }

    [Theory]
    [MemberData(nameof(ReleasesOnServer))]
    public void A_shop_on_a_server_is_restored_brought_up_to_date_and_checks_well(string release)
    {
        using var shop = MuseumShop.OnServer(release);
        shop.Place.Open(shop.Clock).Dispose();
        Assert.Empty(ShopCheck.Of(shop.Place, shop.Clock));
    }

    [Theory]
    [MemberData(nameof(Releases))]
    public async Task An_export_is_imported_into_an_empty_folder_and_is_the_shop_of_the_file(string release)
    {
        using var shop = MuseumShop.InFile(release);
        shop.Place.Open(shop.Clock).Dispose();
        using var store = TestStore.InFile();
        await ImportsAsync(release, shop, new(store.Folder));
    }

    [Theory]
    [MemberData(nameof(Releases))]
    public async Task An_export_is_imported_into_an_empty_server_and_is_the_shop_of_the_file(string release)
    {
        using var shop = MuseumShop.InFile(release);
        shop.Place.Open(shop.Clock).Dispose();
        using var store = TestStore.OnServer();
        await ImportsAsync(release, shop, new(store.Folder, store.Connection));
    }

    [Theory]
    [MemberData(nameof(Releases))]
    public void Every_piece_and_bore_is_as_it_was_ticketed_to_the_nanometre_in_a_file(string release)
    {
        using var shop = MuseumShop.InFile(release);
        AssertAsTicketed(shop, release);
    }

    [Theory]
    [MemberData(nameof(ReleasesOnServer))]
    public void Every_piece_and_bore_is_as_it_was_ticketed_to_the_nanometre_on_a_server(string release)
    {
        using var shop = MuseumShop.OnServer(release);
        AssertAsTicketed(shop, release);
    }

    [Theory]
    [MemberData(nameof(ReleasesOnServer))]
    public async Task Work_goes_on_in_a_file_where_it_was_left(string release)
    {
        using var shop = MuseumShop.InFile(release);
        await WorkGoesOnAsync(shop);
    }

    [Theory]
    [MemberData(nameof(ReleasesOnServer))]
    public async Task Work_goes_on_on_a_server_where_it_was_left(string release)
    {
        using var shop = MuseumShop.OnServer(release);
        await WorkGoesOnAsync(shop);
    }

    private static async Task ImportsAsync(string release, MuseumShop shop, ShopPlace to)
    {
        var answer = await new ShopImport(to, shop.Clock).ReadAsync(shop.Export(release), Cancel);
        Assert.Null(answer.Problem);
        Assert.Equal(ShopDigest.Of(shop.Place), ShopDigest.Of(to));
        Assert.Empty(ShopCheck.Of(to, shop.Clock));
    }

    /// <summary>Holds what the shop works with now against the rows that the release stored.</summary>
    private static void AssertAsTicketed(MuseumShop shop, string release)
    {
        using var database = shop.Place.Open(shop.Clock);
        var said = shop.Said(release);
        var jobs = new JobShelf(database);
        var pieces = Rows(said, "pieces.csv").Where(row => row[8].Length == 0).ToList();
        var numbers = pieces.Select(row => row[0]).Distinct().Select(number => jobs.Find(number)!).ToList();
        Assert.Equal(
            pieces.Select(row => $"{row[0]} {row[1]} {row[2]} {row[5]} {row[6]} {row[7]} {row[9]}").Order(StringComparer.Ordinal),
            numbers.SelectMany(job => job.Takeoff.Pieces.Zip(job.Pieces).Select(pair =>
                $"{job.Number} {pair.First.Run} {pair.Second.Code.Plain} {pair.First.Rope.MaterialName} {pair.First.Rope.Diameter.Nanometres} {pair.Second.Cut.Nanometres} {pair.Second.State}"))
                .Order(StringComparer.Ordinal));
        var posts = Rows(said, "posts.csv").Where(row => row[4].Length == 0).Select(row => $"{row[0]} {row[1]}").ToHashSet();
        Assert.Equal(
            Rows(said, "bores.csv").Where(row => posts.Contains($"{row[0]} {row[1]}"))
                .Select(row => $"{row[0]} {row[1]} {row[2]} {row[4]} {row[5]} {row[6]} {row[7]} {row[8]} {row[9]}").Order(StringComparer.Ordinal),
            numbers.SelectMany(job => job.Takeoff.Bores.SelectMany(bore => bore.Operations.Select((drilling, i) =>
                $"{job.Number} {bore.Post.Mark} {bore.Run} {TakeoffJson.Word(bore.Kind)} {bore.Bit.Nanometres} {bore.Height.Nanometres} {i} {drilling.Face} {drilling.Depth.Nanometres}")))
                .Order(StringComparer.Ordinal));
    }

    /// <summary>Who has a ticket at the bench goes on with it; what waits is taken; what is new comes in.</summary>
    private static async Task WorkGoesOnAsync(MuseumShop shop)
    {
        using (var database = shop.Place.Open(shop.Clock))
        {
            var (cut, drill) = (new CutBench(database), new DrillBench(database));
            var key = 0;
            foreach (var work in cut.AtTheBench())
            {
                Assert.Equal(AskedToWork, work.Job);
                for (var step = work.Next; step is { } now; step = cut.Find(work.Code)!.Next)
                {
                    Done(now == CutStep.Measure
                        ? await cut.MeasureAsync(work.Code, work.Cut, isSure: false, work.ClaimedBy!, $"museum step {++key}", Cancel)
                        : await cut.TickAsync(work.Code, now, work.ClaimedBy!, $"museum step {++key}", Cancel));
                }
                Assert.Equal(TicketStates.Cut, cut.Find(work.Code)!.State);
                Done(await new PackingBench(database).PackAsync(work.Job, work.Code, "Ada", $"museum step {++key}", Cancel));
            }
            foreach (var work in drill.AtTheBench())
            {
                for (var step = work.Next; step is { } now; step = drill.Find((work.Job, work.Post))!.Next)
                    Done(await drill.TickAsync((work.Job, work.Post), now, work.ClaimedBy!, $"museum step {++key}", Cancel));
                Done(await drill.FitsAsync((work.Job, work.Post), work.ClaimedBy!, $"museum step {++key}", Cancel));
            }
            var next = await cut.NextAsync("Cai", "museum next piece", Cancel);
            Done(next);
            Done(await cut.RecordCutAsync(PieceCode.Parse(next.Outcome).OrThrow(), "Cai", "museum cut", Cancel));
            Done(await drill.NextAsync("Dov", "museum next post", Cancel));
            Assert.Equal(ReleaseOutcome.Done, await new JobRelease(database).ReleaseAsync("LQ-2012", "Dee", Cancel));
            Assert.Equal(IntakeOutcome.TakenIn, await new JobIntake(database, ShopTables.Standard).TakeInAsync(SmallJobs.OnePiece("LQ-9001"), "Ada", cancel: Cancel));
        }
        Assert.Empty(ShopCheck.Of(shop.Place, shop.Clock));
    }

    private static void Done(BenchAnswer answer) => Assert.Null(answer.Problem);

    /// <summary>
    /// The rows under the head of a sheet. No cell of a museum's sheet has a line break or a quote in it; one that starts as a formula has an
    /// apostrophe in front.
    /// </summary>
    private static IEnumerable<string[]> Rows(string said, string sheet) => File.ReadLines(Path.Combine(said, sheet)).Skip(1).Select(Cells);

    private static string[] Cells(string line)
    {
        var cells = new List<string>();
        var (cell, isQuoted) = ("", false);
        foreach (var c in line)
        {
            if (c == '"')
                isQuoted = !isQuoted;
            else if (c == ',' && !isQuoted)
                (cells, cell) = ([.. cells, cell], "");
            else
                cell += c;
        }
        return [.. cells.Append(cell).Select(text => text is ['\'', '=' or '+' or '-' or '@', ..] ? text[1..] : text)];
    }
}
