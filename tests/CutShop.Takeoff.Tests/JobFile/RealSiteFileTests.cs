using System.Text;
using CutShop.Testing.Fuzz;

namespace CutShop.Takeoff.Tests.JobFile;

/// <summary>Random sites with curves, rings, eyes, holes, joins and wetting: written and read they stay the same, stored and read likewise, and broken they do no harm.</summary>
public class RealSiteFileTests
{
    private const int Sites = 300;

    private static readonly JobFileMutations Broken = new([.. Enumerable.Range(0, 40).Select(seed => Encoding.UTF8.GetBytes(RandomSite.Of(seed).ToJsonString()))]);

    [Fact]
    public void What_is_written_reads_back_as_the_same_job()
    {
        foreach (var job in Jobs())
        {
            var written = JobFileWriter.Write(job);
            var again = Sample.Read(written);
            Assert.Empty(again.Problems);
            Assert.Equal(written, JobFileWriter.Write(again.Job!));
            Assert.Equal(Output(job), Output(again.Job!));
        }
    }

    [Fact]
    public void What_is_stored_reads_back_as_the_same_parts()
    {
        foreach (var takeoff in Jobs().Select(job => JobTakeoff.Of(job, ShopTables.Standard)))
        {
            foreach (var text in PieceWork.Of(takeoff).Select(PartText.Write))
                Assert.Equal(text, PartText.Write(PartText.ReadPiece(text, PartText.Format)));
            foreach (var text in PostWork.Of(takeoff).Select(PartText.Write))
                Assert.Equal(text, PartText.Write(PartText.ReadPost(text, PartText.Format)));
            var whole = PartText.Write(takeoff);
            var read = PartText.ReadTakeoff(whole, PartText.Format);
            Assert.Equal(whole, PartText.Write(read));
            Assert.Equal(Output(takeoff), Output(read));
        }
    }

    [Fact]
    public void Broken_it_does_no_harm()
    {
        for (var seed = 0; seed < 3_000; seed++)
            Assert.Null(Harm.OfJobFile(Broken.Make(seed)));
    }

    /// <summary>Every piece has its order of work, whatever it does at its posts.</summary>
    [Fact]
    public void Every_piece_can_be_hung_in_steps()
    {
        foreach (var takeoff in Jobs().Select(job => JobTakeoff.Of(job, ShopTables.Standard)))
        {
            foreach (var piece in takeoff.Pieces)
            {
                var steps = Installation.StepsOf(takeoff, piece);
                Assert.Equal(2, steps.OfType<EndStep>().Count());
                Assert.Equal(piece.Sections.Count, steps.OfType<SagStep>().Count());
            }
        }
    }

    private static List<Job> Jobs()
    {
        var jobs = Enumerable.Range(0, Sites).Select(seed => Sample.Read(RandomSite.Of(seed).ToJsonString()).Job).OfType<Job>().ToList();
        Assert.InRange(jobs.Count, Sites / 2, Sites);
        return jobs;
    }

    private static string Output(Job job) => Output(JobTakeoff.Of(job, ShopTables.Standard));

    private static string Output(JobTakeoff takeoff)
    {
        using var stream = new MemoryStream();
        TakeoffJson.Write(takeoff, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
