using System.Security.Claims;
using System.Security.Cryptography;
using CutShop.Shop.Jobs;
using CutShop.Takeoff.Intake;
using CutShop.Takeoff.JobFile;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;

namespace CutShop.Web.Api;

/// <summary>A job as taken in.</summary>
/// <param name="Number">The job's number.</param>
/// <param name="Outcome"><c>taken in</c>, or <c>as before</c> where the very same job was there.</param>
/// <param name="Pieces">Its pieces of rope.</param>
/// <param name="Bores">Its bores.</param>
public sealed record JobTakenIn(string Number, string Outcome, int Pieces, int Bores);

/// <summary>Takes a job in from its job file.</summary>
internal static class TakeInApi
{
    private const int LongestKey = 200;

    public static void MapTakeIn(this RouteGroupBuilder api) => api.MapPost("/jobs", TakeInAsync)
        .RequireAuthorization(KeyRights.TakeIn)
        .WithMetadata(new RequestSizeLimitAttribute(JobFileReader.LargestFile))
        .WithName("takeInJob")
        .WithTags("Taking in")
        .WithSummary(HostWords.Say("ApiTakeIn"))
        .WithDescription(HostWords.Say("ApiTakeInAbout"))
        .TakesAndTells("application/json");

    private static async Task<Results<Created<JobTakenIn>, Ok<JobTakenIn>, ProblemHttpResult>> TakeInAsync(
        HttpRequest request, ClaimsPrincipal user, JobIntake intake, CancellationToken cancel)
    {
        var (bytes, problem) = await RequestBody.ReadAsync(request, "application/json");
        if (problem is not null)
            return problem;
        var reading = JobFileReader.Read(bytes);
        return reading.Job is { } job
            ? await StoreAsync(job, bytes, request, user, intake, cancel)
            : ApiProblem.Of(reading.Problems);
    }

    /// <summary>Takes a job in that was read from <paramref name="content"/>, minding the request's Idempotency-Key.</summary>
    internal static async Task<Results<Created<JobTakenIn>, Ok<JobTakenIn>, ProblemHttpResult>> StoreAsync(
        Job job, byte[] content, HttpRequest request, ClaimsPrincipal user, JobIntake intake, CancellationToken cancel)
    {
        var key = request.Headers["Idempotency-Key"].ToString();
        if (key.Length > LongestKey)
            return ApiProblem.Of(StatusCodes.Status400BadRequest, HostWords.Say("ApiLongKey"), new ProblemPlace("Idempotency-Key", key[..40] + "…", HostWords.Say("ApiLongestKey", LongestKey)));

        // Without a key of its own the request is known by the job's number.
        var fingerprint = Convert.ToHexStringLower(SHA256.HashData(content));
        var who = KeyRights.WhoIs(user);
        var answer = key.Length > 0
            ? await intake.TakeInOnceAsync(job, who, $"api {KeyRights.IdOf(user)} {request.Path} {key}", fingerprint, cancel)
            : await intake.TakeInAnsweredAsync(job, who, cancel);
        return Answer(answer, key);
    }

    private static Results<Created<JobTakenIn>, Ok<JobTakenIn>, ProblemHttpResult> Answer(IntakeAnswer answer, string key) => answer.Outcome switch
    {
        IntakeOutcome.TakenIn => TypedResults.Created(
            $"{ApiRoutes.Root}/jobs/{Uri.EscapeDataString(answer.Number)}", new JobTakenIn(answer.Number, "taken in", answer.Pieces, answer.Bores)),
        IntakeOutcome.HadItAlready => TypedResults.Ok(new JobTakenIn(answer.Number, "as before", answer.Pieces, answer.Bores)),
        IntakeOutcome.NumberTaken => ApiProblem.Of(
            StatusCodes.Status409Conflict,
            HostWords.Say("ApiNumberTaken"),
            new ProblemPlace("$.number", answer.Number, HostWords.Say("ApiOwnNumber"))),
        IntakeOutcome.KeyTaken => ApiProblem.Of(
            StatusCodes.Status422UnprocessableEntity,
            HostWords.Say("ApiKeyUsed"),
            new ProblemPlace("Idempotency-Key", key, HostWords.Say("ApiNewKey"))),
        _ => throw new InvalidOperationException($"No answer is known for {answer.Outcome}."),
    };
}
