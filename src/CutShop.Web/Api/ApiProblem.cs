using System.Text.Json.Serialization;
using CutShop.Takeoff.JobFile;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.WebUtilities;

namespace CutShop.Web.Api;

/// <summary>One thing wrong with what was sent.</summary>
/// <param name="Path">Where: a JSON path such as <c>$.lines[0].posts[1].across</c>, or the name of a header or query value.</param>
/// <param name="Value">The value there; empty where it is missing.</param>
/// <param name="Text">What is wrong and what is accepted.</param>
/// <param name="Line">In a sheet, the line, from 1.</param>
/// <param name="Column">In a sheet, the column, from 1.</param>
public sealed record ProblemPlace(
    string Path,
    string Value,
    string Text,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Line = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] int? Column = null);

/// <summary>How a problem looks (RFC 9457): the standard members, and every place that is wrong.</summary>
/// <param name="Type">What kind of problem.</param>
/// <param name="Title">The kind in words.</param>
/// <param name="Status">The HTTP status.</param>
/// <param name="Detail">This problem in words.</param>
/// <param name="Problems">Every place that is wrong; left out where no place is.</param>
public sealed record ApiProblemBody(string Type, string Title, int Status, string? Detail, IReadOnlyList<ProblemPlace>? Problems);

/// <summary>Makes problem details.</summary>
internal static class ApiProblem
{
    public const string ContentType = "application/problem+json";

    /// <summary>Places that are listed; the words say how many there are.</summary>
    public const int MostListed = 100;

    public static ProblemHttpResult Of(int status, string detail, params IReadOnlyList<ProblemPlace> problems)
    {
        var body = new ProblemDetails { Type = "about:blank", Title = ReasonPhrases.GetReasonPhrase(status), Status = status, Detail = detail };
        if (problems.Count > 0)
            body.Extensions["problems"] = problems;
        return TypedResults.Problem(body);
    }

    /// <summary>The problem of a job file that could not be read.</summary>
    public static ProblemHttpResult Of(IReadOnlyList<JobProblem> problems) =>
        OfFile("JobFile", [.. problems.Take(MostListed).Select(problem => new ProblemPlace(problem.Path, problem.Value, problem.Text))], problems.Count);

    /// <summary>The problem of a file that could not be read: how many places are wrong, and the first of them.</summary>
    /// <param name="what">JobFile or Sheet.</param>
    /// <param name="first">The first places.</param>
    /// <param name="count">How many there are.</param>
    public static ProblemHttpResult OfFile(string what, IReadOnlyList<ProblemPlace> first, int count) => Of(
        StatusCodes.Status400BadRequest,
        Counted(what, first.Count, count),
        first);

    private static string Counted(string what, int listed, int count)
    {
        var (one, some) = what == "Sheet" ? ("ApiOneWrongSheet", "ApiSomeWrongSheet") : ("ApiOneWrongJobFile", "ApiSomeWrongJobFile");
        return count == 1 ? HostWords.Say(one)
            : count == listed ? HostWords.Say(some, count)
            : $"{HostWords.Say(some, count)} {HostWords.Say("ApiFirstListed", listed)}";
    }

    /// <summary>The problem of a job that is not there.</summary>
    public static ProblemHttpResult NoJob(string number) =>
        Of(StatusCodes.Status404NotFound, HostWords.Say("ApiNoJob"), new ProblemPlace("number", number, HostWords.Say("ApiJobNumber")));

    /// <summary>Answers with a status alone.</summary>
    public static Task WriteAsync(HttpContext context, int status) => Of(status, status switch
    {
        401 => HostWords.Say("ApiSendKey"),
        403 => HostWords.Say("ApiReadOnlyKey"),
        404 => HostWords.Say("ApiNothingHere"),
        405 => HostWords.Say("ApiOtherMethod"),
        500 => HostWords.Say("ApiBroke"),
        _ => ReasonPhrases.GetReasonPhrase(status),
    }).ExecuteAsync(context);
}
