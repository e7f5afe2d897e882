using System.Security.Claims;
using CutShop.Shop.Jobs;
using CutShop.Takeoff.Intake;
using CutShop.Takeoff.JobFile;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace CutShop.Web.Api;

/// <summary>Takes a job in from a spreadsheet's sheet.</summary>
internal static class SheetTakeInApi
{
    public static void MapSheetTakeIn(this RouteGroupBuilder api) => api.MapPost("/jobs/csv", TakeInAsync)
        .RequireAuthorization(KeyRights.TakeIn)
        .WithMetadata(new RequestSizeLimitAttribute(JobFileReader.LargestFile))
        .WithName("takeInJobSheet")
        .WithTags("Taking in")
        .WithSummary(HostWords.Say("ApiTakeInSheet"))
        .WithDescription(HostWords.Say("ApiTakeInSheetAbout"))
        .TakesAndTells("text/csv");

    private static async Task<Results<Created<JobTakenIn>, Ok<JobTakenIn>, ProblemHttpResult>> TakeInAsync(
        HttpRequest request, ClaimsPrincipal user, JobIntake intake, CancellationToken cancel)
    {
        var (bytes, problem) = await RequestBody.ReadAsync(request, "text/csv");
        if (problem is not null)
            return problem;
        var sheet = JobSheetReader.Read(bytes);
        if (sheet.Problems.Count > 0)
            return Wrong(sheet.Problems);
        var reading = JobReader.Read(sheet.Job);
        return reading.Job is { } job
            ? await TakeInApi.StoreAsync(job, bytes, request, user, intake, cancel)
            : Wrong([.. reading.Problems.Select(wrong => InCell(wrong, sheet))]);
    }

    private static ProblemPlace InCell(JobProblem problem, JobSheet sheet)
    {
        var cell = sheet.CellOf(problem.Place);
        return new(problem.Path, problem.Value, problem.Text, cell.Line, cell.Column);
    }

    private static ProblemHttpResult Wrong(IReadOnlyList<ProblemPlace> problems) => ApiProblem.OfFile(
        "Sheet", [.. problems.OrderBy(problem => problem.Line).ThenBy(problem => problem.Column).Take(ApiProblem.MostListed)], problems.Count);
}
