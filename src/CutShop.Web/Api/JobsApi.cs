using System.Text.Json;
using CutShop.Shop.Jobs;
using CutShop.Shop.Store;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Result;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;

namespace CutShop.Web.Api;

/// <summary>A job in a list.</summary>
/// <param name="Number">The job's number.</param>
/// <param name="Customer">Who ordered it.</param>
/// <param name="Due">When it is due, or null.</param>
/// <param name="TakenInAt">When it was taken in, UTC.</param>
/// <param name="State">received, released or cancelled.</param>
/// <param name="Pieces">Pieces of rope.</param>
/// <param name="Cut">Pieces cut so far.</param>
/// <param name="Posts">Posts to drill.</param>
/// <param name="Drilled">Posts drilled so far.</param>
public sealed record JobLine(
    string Number, string Customer, DateOnly? Due, DateTimeOffset TakenInAt, string State, long Pieces, long Cut, long Posts, long Drilled)
{
    internal static JobLine Of(JobNewsLine job) => new(
        job.Number, job.Customer, job.Due, job.TakenInAt, job.State, job.Pieces, job.Cut, job.Posts, job.Drilled);
}

/// <summary>Jobs since a cursor.</summary>
/// <param name="Jobs">The jobs, the oldest change first.</param>
/// <param name="Next">The cursor to ask with next.</param>
/// <param name="More">True where there may be more right now.</param>
public sealed record JobPage(IReadOnlyList<JobLine> Jobs, string Next, bool More);

/// <summary>A job with its file.</summary>
/// <param name="Job">How it stands.</param>
/// <param name="File">The job file in its plain form.</param>
public sealed record JobWithFile(JobLine Job, JsonElement File);

/// <summary>Tells of jobs.</summary>
internal static class JobsApi
{
    public static void MapJobs(this RouteGroupBuilder api)
    {
        var jobs = api.MapGroup("").WithTags("Jobs");
        jobs.MapGet("/jobs", List).WithName("listJobs").WithSummary(HostWords.Say("ApiListJobs")).Tells(400, 410);
        jobs.MapGet("/jobs/{number}", Find).WithName("getJob").WithSummary(HostWords.Say("ApiGetJob")).Tells(404);
        jobs.MapGet("/jobs/{number}/takeoff", Takeoff).WithName("getTakeoff").WithSummary(HostWords.Say("ApiTakeoff"))
            .Produces<object>(StatusCodes.Status200OK, "application/json").Tells(404);
    }

    private static Results<Ok<JobPage>, ProblemHttpResult> List(JobFeed news, ShopDatabase database, string? since, string? most)
    {
        var asked = Cursor.Read(database, since, most);
        if (!asked.IsGood)
            return asked.Problem!;
        var jobs = news.JobsSince(asked.Since, asked.Most);
        return TypedResults.Ok(new JobPage([.. jobs.Select(JobLine.Of)], asked.Next(jobs is [.., var last] ? last.Cursor : null), jobs.Count == asked.Most));
    }

    private static Results<Ok<JobWithFile>, ProblemHttpResult> Find(string number, JobFeed news, JobShelf shelf)
    {
        if (news.Job(number) is not { } line || shelf.Find(number) is not { } job)
            return ApiProblem.NoJob(number);
        using var file = JsonDocument.Parse(JobFileWriter.Write(shelf.AsOrdered(number) ?? job.Takeoff.Job));
        return TypedResults.Ok(new JobWithFile(JobLine.Of(line), file.RootElement.Clone()));
    }

    private static Results<FileContentHttpResult, ProblemHttpResult> Takeoff(string number, JobShelf shelf)
    {
        if (shelf.Find(number) is not { } job)
            return ApiProblem.NoJob(number);
        using var json = new MemoryStream();
        TakeoffJson.Write(job.Takeoff, json);
        return TypedResults.Bytes(json.ToArray(), "application/json");
    }
}
