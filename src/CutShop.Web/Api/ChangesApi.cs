using CutShop.Shop.Jobs;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Api;

/// <summary>Changes since a cursor.</summary>
/// <param name="Changes">Lines of the history, in order.</param>
/// <param name="Next">The cursor to ask with next.</param>
/// <param name="More">True where there may be more right now.</param>
public sealed record ChangePage(IReadOnlyList<Change> Changes, string Next, bool More);

/// <summary>Tells what changed in the shop, for programs that ask now and then.</summary>
internal static class ChangesApi
{
    public static void MapChanges(this RouteGroupBuilder api) => api.MapGet("/changes", List)
        .WithName("listChanges")
        .WithTags("Changes")
        .WithSummary(HostWords.Say("ApiListChanges"))
        .WithDescription(HostWords.Say("ApiListChangesAbout"))
        .Tells(400, 410);

    private static Results<Ok<ChangePage>, ProblemHttpResult> List(JobFeed news, ShopDatabase database, string? since, string? most)
    {
        var asked = Cursor.Read(database, since, most);
        if (!asked.IsGood)
            return asked.Problem!;
        var changes = news.ChangesSince(asked.Since, asked.Most);
        return TypedResults.Ok(new ChangePage(changes, asked.Next(changes is [.., var last] ? last.Id : null), changes.Count == asked.Most));
    }
}
