using System.Text.Json;
using System.Text.RegularExpressions;
using CutShop.Testing.Jobs;
using CutShop.Testing.Trust;

namespace CutShop.Shop.Tests.Store;

/// <summary>What holds for every line of the history, whichever operation writes it.</summary>
public sealed partial class HistoryLawTests : IDisposable
{
    /// <summary>States as the tables keep them, and what stands in their place where a value is chosen.</summary>
    private static readonly string[] States =
    [
        "", .. TicketStates.All, "received", "released", "draft", "accepted", "replaced", "open", "closed", "dropped",
        CoilStates.InStock, CoilStates.Retired, PersonRows.Active, PersonRows.SwitchedOff, "enrolled", "removed", "in use", "revoked",
        "installed", "not-installed", "bored", "not-bored", "as-the-shop", "feet-and-inches", "millimetres",
        .. SiteReportWords.All.Select(pair => pair.Word), .. BitWords.All, .. Enum.GetValues<Role>().Select(RoleNames.NameOf), .. Enum.GetValues<KeyScope>().Select(ApiKeyShelf.NameOf),
    ];

    private readonly ShopOnDisk _shop = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public static TheoryData<int> Operations => [.. Enumerable.Range(0, WriteOperations.All.Count)];

    [Fact]
    public void A_code_and_a_cause_are_lower_case_words_with_hyphens() =>
        Assert.All(HistoryCodes.All.Select(code => code.Code).Concat(HistoryCause.All.Select(cause => cause.Code)), code => Assert.Matches(Code(), code));

    [Theory]
    [MemberData(nameof(Operations))]
    public async Task A_line_holds_codes_states_and_numbers_and_can_be_shown(int number)
    {
        using var shop = await FaultShop.MakeAsync();
        var before = LastLine(shop);
        await WriteOperations.All[number].Prepare(shop);
        await WriteOperations.All[number].Do(shop);
        foreach (var entry in Entries(shop, before))
        {
            Assert.Contains(HistoryCodes.All, code => code.Code == entry.Code);
            Assert.True(entry.Cause.Length == 0 || HistoryCause.All.Any(cause => cause.Code == entry.Cause), entry.Cause);
            Assert.NotEmpty(entry.InWords().What);
            using var details = JsonDocument.Parse(entry.Details);
            Assert.All(details.RootElement.EnumerateObject(), detail =>
                Assert.True(detail.Value.ValueKind is JsonValueKind.Number || Detail().IsMatch(detail.Value.GetString()!), $"{entry.Code}: {detail}"));
            // What a shop sets is its value; the number of a job, the code of a label, a run and a day are what they are.
            if (entry.Code is not ("setting-set" or "currency-set" or "price-list-kept"))
                Assert.All([entry.Before, entry.After], text => Assert.True(States.Contains(text) || Number().IsMatch(text), $"{entry.Code}: {text}"));
        }
    }

    [Theory]
    [MemberData(nameof(Operations))]
    public async Task A_line_holds_nobodys_name(int number)
    {
        using var shop = await FaultShop.MakeAsync();
        await WriteOperations.All[number].Prepare(shop);
        await WriteOperations.All[number].Do(shop);
        foreach (var name in new[] { "Ada", "Cai", "Dov", "Eva", "Lantern Quay boardwalk", "Bench 2", "a program" })
            Assert.DoesNotContain(HistoryRows.Of(shop.Database), row => row.Contains(name, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_person_whose_name_is_removed_is_gone_from_what_is_shown_and_the_history_is_as_it_was()
    {
        var ada = (await new PeopleShelf(_shop.Database).AddAsync("Ada", Role.Owner, PeopleShelf.DrawPassword(), "test", Cancel)).Id;
        await _shop.Intake.TakeInAsync(SmallJobs.OnePiece("LQ-1"), "Ada", cancel: Cancel);
        var bench = new DrillBench(_shop.Database);
        Assert.True((await bench.TakeAsync(("LQ-1", "A1"), "Ada", "1", Cancel)).IsDone);
        Assert.True((await bench.TakeOverAsync(("LQ-1", "A1"), "Dov", "2", Cancel)).IsDone);
        var (rows, before) = (HistoryRows.Of(_shop.Database), Shown());
        Assert.Contains("Ada taken in", before);
        Assert.Contains("Dov taken over from Ada", before);

        await _shop.Database.WriteAsync(session => session.Execute("UPDATE people SET name = 'removed 1', name_key = 'REMOVED 1' WHERE id = @ada", new { ada }), Cancel);
        Assert.Equal(before.Select(line => line.Replace("Ada", "removed 1", StringComparison.Ordinal)), Shown());
        Assert.Equal(rows, HistoryRows.Of(_shop.Database));
        Assert.Empty(_shop.Database.Read(session => ShopCheck.OfRows(session).ToList()));
        Assert.DoesNotContain("Ada", _shop.Database.Read(session => session.All<string>("SELECT coalesce(name, '') FROM actors")));

        IReadOnlyList<string> Shown() =>
            [.. new JobFeed(_shop.Database).ChangesSince(0, 100).Select(change => change.Code == "taken-over" ? $"{change.Who} {change.What} from {change.Before}" : $"{change.Who} {change.What}")];
    }

    [Fact]
    public async Task A_person_comes_before_a_key_and_a_key_before_a_name_and_each_is_one_actor()
    {
        await RecordAsync("Ada", "Ada", "key orders", "key orders");
        await new PeopleShelf(_shop.Database).AddAsync("Ada", Role.Owner, PeopleShelf.DrawPassword(), "Ada", Cancel);
        await new ApiKeyShelf(_shop.Database).MakeAsync("orders", KeyScope.Read, "Ada", Cancel);
        await new ApiKeyShelf(_shop.Database).MakeAsync("orders", KeyScope.Read, "Ada", Cancel);
        await RecordAsync("Ada", "key orders", "site");
        Assert.Equal(
            ["name Ada", "name Ada", "name key orders", "name key orders", "person 1", "person 1", "person 1", "person 1", "key 2", "name site"],
            _shop.Database.Read(session => session.All<string>(
                """
                SELECT CASE WHEN person_id IS NOT NULL THEN concat('person ', person_id) WHEN api_key_id IS NOT NULL THEN concat('key ', api_key_id) ELSE concat('name ', name) END
                FROM history JOIN actors ON actors.id = actor_id ORDER BY history.id
                """)));
    }

    [Fact]
    public void A_code_of_a_newer_program_is_shown_as_it_is()
    {
        var entry = new HistoryEntry(default, "Ada", "", "rope-dyed", "white", "red", null, null, "{}", "too-plain", "");
        Assert.Equal(new HistoryLine(default, "Ada", "rope-dyed", "white", "red", "too-plain"), entry.InWords());
    }

    public void Dispose() => _shop.Dispose();

    private Task<bool> RecordAsync(params string[] names) => _shop.Database.WriteAsync(
        session =>
        {
            foreach (var name in names)
                session.Record("job", 1, name, HistoryCodes.JobReleased);
            return true;
        },
        Cancel);

    private static long LastLine(FaultShop shop) => shop.Database.Read(session => session.Value<long>("SELECT max(id) FROM history"));

    private static IReadOnlyList<HistoryEntry> Entries(FaultShop shop, long since) => shop.Database.Read(session => session.All<HistoryEntry>(
        $"SELECT {HistoryEntry.Columns} FROM history WHERE history.id > @since ORDER BY history.id", new { since }));

    [GeneratedRegex("^[a-z]+(-[a-z]+)*$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Code();

    /// <summary>The mark of a coil, the name of a setting, a way to sign in.</summary>
    [GeneratedRegex("^(K[0-9]+|[a-z]+( [a-z]+)*|PIN|password)$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Detail();

    [GeneratedRegex("^([A-Z]{2}-[0-9]+|[0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]{4}|A-top-1)$", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Number();
}
