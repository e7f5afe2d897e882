using System.Text;
using CutShop.Testing.Jobs;

namespace CutShop.Shop.Tests.Orders;

public sealed class DraftOfTests
{
    /// <summary>Jobs that use every name of the job file, as the takeoff's tests make them.</summary>
    [Fact]
    public void Any_job_opens_as_a_draft_that_reads_back_as_the_same_job()
    {
        var opened = 0;
        for (var seed = 0; seed < 400; seed++)
        {
            if (JobFileReader.Read(Encoding.UTF8.GetBytes(RandomSite.Of(seed).ToJsonString())).Job is not { } job || job.Posts.Count() > DraftForm.MostPosts)
                continue;
            var sent = DraftFields.Read(DraftFields.Of(DraftFields.FromJson(DraftFields.ToJson(DraftOf.Job(job)))));
            var reading = DraftReading.Of(sent, ShopTables.Standard);
            Assert.Equal((seed, 0), (seed, reading.Errors));
            Assert.Equal(JobFileWriter.Write(job), JobFileWriter.Write(reading.Takeoff!.Job));
            opened++;
        }
        Assert.InRange(opened, 300, 400);
    }

    [Fact]
    public void Marks_of_any_letters_are_kept_where_a_field_speaks_of_many()
    {
        const string file =
            """
            { "number": "LQ-1", "rope": { "material": "polypropylene", "diameter": "1 1/2 in" }, "lines": [ { "mark": "A",
              "posts": [ { "mark": "a, b", "shape": "square", "across": "5 1/2 in", "height": "42 in", "holes": { "at; top": { "across": "1 5/8 in", "height": "35 in", "bore": "level" } } },
                         { "mark": "\"c\": d", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
                         { "mark": "e f", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
              "sections": [ { "clear": "72 in", "clearAt": { "at; top": "71 in" } }, { "clear": "72 in" } ],
              "rows": [ { "mark": "at; top", "height": "36 in", "sag": "5 in", "start": "stopped", "finish": "stopped",
                "heights": { "e f": "35 in", "\"c\": d": "34.5 in" }, "at": { "\"c\": d": "wrap 2" } } ] } ] }
            """;
        var job = JobFileReader.Read(Encoding.UTF8.GetBytes(file)).Job!;
        Assert.Equal(JobFileWriter.Write(job), JobFileWriter.Write(DraftReading.Of(DraftOf.Job(job), ShopTables.Standard).Takeoff!.Job));
    }

    [Fact]
    public void A_field_that_speaks_of_many_posts_is_kept_whole()
    {
        var heights = MarkedText.Of(Enumerable.Range(1, DraftForm.MostPosts).Select(post => (FormattableString.Invariant($"A{post}"), "35 1/2 in")));
        var form = SmallJobs.FourPosts();
        form = form with { Lines = [form.Lines[0] with { Rows = [form.Lines[0].Rows[0] with { Heights = heights }] }] };
        Assert.Equal(heights, DraftFields.Read(DraftFields.Of(form)).Lines[0].Rows[0].Heights);
    }

    [Fact]
    public void A_stored_draft_holds_only_what_was_typed()
    {
        var json = DraftFields.ToJson(SmallJobs.FourPosts());
        Assert.DoesNotContain("girth", json, StringComparison.Ordinal);
        Assert.DoesNotContain("\"\"", json, StringComparison.Ordinal);
        Assert.Equal(json, DraftFields.ToJson(DraftFields.FromJson(json)));
    }
}
