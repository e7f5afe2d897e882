using CutShop.Testing.Jobs;
using Microsoft.Playwright;

namespace CutShop.Web.Tests.Orders;

/// <summary>What a person at the order desk does, step by step.</summary>
internal static class DeskSteps
{
    /// <summary>The answers to the questions for four posts, by field.</summary>
    public static IReadOnlyDictionary<string, string> FourPosts { get; } = new Dictionary<string, string>
    {
        ["number"] = "LQ-5001",
        ["customer"] = "Lantern Quay boardwalk",
        ["posts"] = "4",
        ["across"] = "5 1/2",
        ["postHeight"] = "42",
        ["width"] = "6'",
        ["rows"] = "36, 18",
        ["diameter"] = "1 1/2",
        ["sag"] = "6",
    };

    /// <summary>A field by its name: names have brackets and dots.</summary>
    public static ILocator Field(this IPage page, string name) => page.Locator($"[id='{name}']");

    /// <summary>A button by its text.</summary>
    public static ILocator Button(this IPage page, string text) => page.GetByRole(AriaRole.Button, new() { Name = text, Exact = true });

    /// <summary>Turns scripts off, as a browser without them.</summary>
    public static async Task TurnScriptsOffAsync(this IPage page)
    {
        var session = await page.Context.NewCDPSessionAsync(page);
        await session.SendAsync("Emulation.setScriptExecutionDisabled", new() { ["value"] = true });
    }

    /// <summary>Answers the questions and makes the draft.</summary>
    public static async Task StartDraftAsync(this IPage page, IReadOnlyDictionary<string, string>? answers = null)
    {
        await page.GotoAsync("/drafts/new");
        foreach (var (field, text) in answers ?? FourPosts)
            await page.Field(field).FillAsync(text);
        await page.Button("Make the draft").ClickAsync();
        await page.WaitForURLAsync("**/drafts/*");
    }

    /// <summary>Keeps a price list through the database, for tests of other things.</summary>
    public static Task KeepPricesAsync(this RunningShop shop) => new PriceBook(shop.Database).KeepAsync(
        new PriceForm("2020-01-01", "4.50", "35", "120", "6.25%", "30", [new("polypropylene", "1 1/2 in", "2.125")], [new("2 1/4 in", "4.25")])
            .Read("$", new Dictionary<string, Sentence>())!,
        "test",
        "prices",
        TestContext.Current.CancellationToken);

    /// <summary>A draft through the database, for tests of other things.</summary>
    public static Task<long> DraftAsync(this RunningShop shop, Func<DraftForm, DraftForm>? change = null)
    {
        var form = SmallJobs.Posts(4, "LQ-5001");
        return new DraftShelf(shop.Database).StartAsync(change is null ? form : change(form), "test", $"draft {Guid.NewGuid()}", TestContext.Current.CancellationToken);
    }

    /// <summary>A quote of a draft through the database.</summary>
    public static async Task<string> QuoteAsync(this RunningShop shop, long draft)
    {
        var made = await new QuoteDesk(shop.Database, new(shop.Database, ShopTables.Standard)).MakeAsync(draft, 1, "test", TestContext.Current.CancellationToken);
        Assert.Null(made.Problem);
        return made.Value;
    }
}
