using CutShop.Shop.Benches;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;

using static CutShop.Web.Benches.BenchWords;

namespace CutShop.Web.Benches;

/// <summary>The drill bench between two posts: one large button that gives the next.</summary>
[MaySend(Rights.DrillPosts)]
public sealed class DrillModel(DrillBench bench, TimeProvider time) : BenchPage
{
    /// <summary>Posts at the benches, ordered again, and drilled last.</summary>
    public IReadOnlyList<(string Heading, IReadOnlyList<DrillWork> Posts)> Lists { get; private set; } = [];

    /// <summary>Posts that wait.</summary>
    public long Waiting { get; private set; }

    /// <summary>The post just done, or null.</summary>
    public DrillWork? Done { get; private set; }

    /// <summary>A scan that led nowhere, or null.</summary>
    public string? Lost { get; private set; }

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time => time;

    /// <summary>Shows the bench, or the post that this person has.</summary>
    public IActionResult OnGet(string? job, string? post, string? lost)
    {
        if (bench.Of(Me) is { } mine && lost is null)
            return Redirect($"/drill/{DrillBench.AddressOf(mine.Job, mine.Post)}");
        Lost = lost;
        Done = job is not null && post is not null ? bench.Find((job, post)) : null;
        return Shown();
    }

    /// <summary>Gives the next post.</summary>
    public async Task<IActionResult> OnPostNextAsync(CancellationToken cancel)
    {
        if (!HasKey)
            return BadRequest();
        var answer = await bench.NextAsync(Me, RequestKey!, cancel);
        return Answered(answer, answer.IsDone ? $"/drill/{answer.Outcome}" : "/drill", Shown);
    }

    private IActionResult Shown()
    {
        Waiting = bench.Waiting();
        Lists = [(T["AtTheBenches"], bench.AtTheBench()), (T["OrderedAgain"], bench.ReOrdered()), (T["DrilledLast"], bench.Latest())];
        return Page();
    }
}
