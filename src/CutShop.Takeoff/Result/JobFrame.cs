using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Tables;

namespace CutShop.Takeoff.Result;

/// <summary>What holds the pieces and posts of a job together: its lines as they are drawn, the warnings that concern no one post, and its totals.</summary>
/// <param name="Rope">The rope of every row that has none of its own.</param>
/// <param name="Allowances">What was added to the geometry.</param>
/// <param name="Lines">The lines, with all posts, sections and rows.</param>
/// <param name="Warnings">What can be built but is unwise and concerns no one post; a post has its own.</param>
/// <param name="Totals">What the job adds up to.</param>
/// <param name="Datum">Where heights are measured from on tickets.</param>
public sealed record JobFrame(
    Rope Rope, Allowances Allowances, IReadOnlyList<Line> Lines, IReadOnlyList<Warning> Warnings, JobTotals Totals, Datum Datum)
{
    /// <summary>The longest cut that a piece may have; null for any.</summary>
    public Length? Longest { get; init; }

    /// <summary>The frame of a takeoff.</summary>
    public static JobFrame Of(JobTakeoff takeoff)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        var job = takeoff.Job;
        return new(
            job.Rope,
            job.Allowances,
            [.. job.Lines.Select(line => line with { Rows = [.. line.Rows.Select(row => row with { Bore = row.Bore ?? (job.Bore == BoreSlope.Level ? BoreSlope.Level : null) })] })],
            [.. takeoff.Warnings.Where(warning => warning.Post is null)],
            JobTotals.Of([.. PieceWork.Of(takeoff)], takeoff.Bores.Count),
            job.Datum)
        {
            Longest = job.Longest,
        };
    }

    /// <summary>The takeoff of a job, from its parts.</summary>
    /// <param name="head">The job's number, customer, day and whether its rope is of one lot; its rope and lines do not count.</param>
    /// <param name="pieces">Pieces in the takeoff's order: all, or those that are wanted.</param>
    /// <param name="posts">Posts, whose bores go to the pieces: all, or those that are wanted.</param>
    public JobTakeoff ToTakeoff(JobHead head, IReadOnlyList<PieceWork> pieces, IReadOnlyCollection<PostWork> posts)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(pieces);
        return new(
            new Job(head.Number, head.Customer, head.Due, Rope, Allowances, Lines, head.OneLot, Datum) { Longest = Longest },
            [.. pieces.Select(piece => piece.Piece)],
            BoresOf(pieces, posts),
            [.. pieces.SelectMany(piece => piece.Fixings)],
            [.. Warnings.Concat(posts.SelectMany(post => post.Warnings)).OrderBy(warning => warning.Number)]);
    }

    /// <summary>Bores in the takeoff's order: row by row along the pieces.</summary>
    private List<Bore> BoresOf(IReadOnlyList<PieceWork> pieces, IReadOnlyCollection<PostWork> posts)
    {
        var at = posts.SelectMany(post => post.Bores).ToLookup(bore => (bore.Post.Mark, bore.Run));
        var closed = Lines.Where(line => line.IsClosed).ToDictionary(line => line.Mark, line => line.Posts[0].Mark);
        var bores = new List<Bore>();
        foreach (var row in pieces.Select(work => work.Piece).GroupBy(piece => (piece.Line, piece.Row)))
        {
            var from = bores.Count;
            var isRing = closed.TryGetValue(row.Key.Line, out var first);
            foreach (var piece in row)
            {
                // A ring of one piece comes to its first post twice, and has the bores of both ends there: the arriving one is stored first.
                var marks = piece.AtPosts.Select(post => post.Post.Mark).Distinct();
                bores.AddRange(marks.SelectMany(mark => at[(mark, piece.Run)]));
            }
            if (isRing && row.Skip(1).Any())
                Bore.ArrivingFirst(bores, from, first!);
        }
        return bores;
    }
}

/// <summary>What a job adds up to.</summary>
/// <param name="Pieces">Pieces of rope.</param>
/// <param name="Bores">Bores.</param>
/// <param name="Screws">Screws.</param>
/// <param name="Cut">All cut lengths together.</param>
public sealed record JobTotals(int Pieces, int Bores, int Screws, Length Cut)
{
    /// <summary>The totals of pieces and bores.</summary>
    public static JobTotals Of(IReadOnlyCollection<PieceWork> pieces, int bores)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        return new(
            pieces.Count,
            bores,
            pieces.Sum(work => work.Fixings.Where(fixing => !fixing.IsHardware).Sum(fixing => fixing.Count)),
            pieces.Aggregate(Length.Zero, (sum, work) => sum + work.Piece.Cut));
    }
}

/// <summary>What a job is called by and when it is due: none of it changes a length.</summary>
/// <param name="Number">The shop's number for the job.</param>
/// <param name="Customer">Who ordered it; may be empty.</param>
/// <param name="Due">The day it must leave the shop, or null.</param>
/// <param name="OneLot">True where all pieces of a rope must come from one lot.</param>
public sealed record JobHead(string Number, string Customer, DateOnly? Due, bool OneLot)
{
    /// <summary>The head of a job.</summary>
    public static JobHead Of(Job job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return new(job.Number, job.Customer, job.Due, job.OneLot);
    }
}
