using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Result;

/// <summary>All that is done at one post.</summary>
/// <param name="Post">The post.</param>
/// <param name="Line">The mark of the line it stands in.</param>
/// <param name="Before">The mark of the post before it, or null at the line's start.</param>
/// <param name="After">The mark of the post after it, or null at the line's end.</param>
/// <param name="Bores">Its bores.</param>
/// <param name="Fixings">The screws at it.</param>
/// <param name="Warnings">What is unwise at it.</param>
/// <param name="Datum">Where its heights are measured from; all heights kept of it are above ground.</param>
public sealed record PostWork(
    Post Post,
    string Line,
    string? Before,
    string? After,
    IReadOnlyList<Bore> Bores,
    IReadOnlyList<Fixing> Fixings,
    IReadOnlyList<Warning> Warnings,
    Datum Datum)
{
    /// <summary>
    /// The screws whose holes are drilled at the bench: face by face so that the post is turned least, then from the top down. Those
    /// that hold turns are screwed on site, through the rope once it is wound.
    /// </summary>
    public IReadOnlyList<Fixing> ScrewHoles =>
        [.. Fixings.Where(fixing => fixing.Face.Sight != FaceSight.Around && !fixing.IsHardware).GroupBy(fixing => fixing.Face).SelectMany(face => FromTheTop(face))];

    /// <summary>The same for posts that are bored with the same bits at the same heights, so that the drill is set up once for all of them.</summary>
    public string Likeness => string.Join(
        ", ",
        Bores.Where(bore => !bore.IsExisting).Select(bore => (Bit: bore.Bit.Nanometres, Kind: PartCodes.AtPost.Of(bore.Kind), Height: bore.Height.Nanometres))
            .OrderByDescending(bore => bore.Bit).ThenBy(bore => bore.Kind, StringComparer.Ordinal).ThenBy(bore => bore.Height)
            .Select(bore => FormattableString.Invariant($"{bore.Bit} {bore.Kind} {bore.Height}")));

    /// <summary>True where the installer bores it.</summary>
    public bool IsBoredOnSite => Bores.Any(bore => bore.BoredBy == BoredBy.Site);

    /// <summary>How many drillings the shop makes in it.</summary>
    public int DrillingsInShop => IsBoredOnSite ? 0 : Bores.Sum(bore => bore.Operations.Count);

    /// <summary>How many screw holes the shop makes in it: none where it drills nothing else.</summary>
    public int ScrewHolesInShop => DrillingsInShop == 0 ? 0 : ScrewHoles.Count;

    /// <summary>True where all that is bored in it is made where it stands, or is there already: it comes to no bench, and its sheet goes with the site's paper.</summary>
    public bool IsForSite => Bores.Count > 0 && DrillingsInShop == 0;

    /// <summary>Its bores, each with its number among those of its row: at a corner a row has two.</summary>
    public IReadOnlyList<NumberedBore> NumberedBores =>
        [.. Bores.Select((bore, i) => new NumberedBore(bore, Bores.Take(i + 1).Count(other => other.Row == bore.Row), Bores.Count(other => other.Row == bore.Row) > 1))];

    /// <summary>
    /// What is drilled, drillings first, as far as nothing changes in the driller's hands: one face with one bit, one stop collar and one
    /// rake; then the screw holes of one face that are alike.
    /// </summary>
    public IReadOnlyList<DrillStep> Steps()
    {
        var steps = new List<DrillStep>();
        foreach (var drilling in Drillings())
        {
            if (steps is [.., { Drillings: [.., var last] } step] && SetUp(last).Equals(SetUp(drilling)))
                steps[^1] = step with { Drillings = [.. step.Drillings, drilling] };
            else
                steps.Add(new(drilling.Number, [drilling], []));
        }
        foreach (var hole in ScrewHoles)
        {
            if (steps is [.., { ScrewHoles: [.., var last] } step] && (last.Face, last.Driven) == (hole.Face, hole.Driven))
                steps[^1] = step with { ScrewHoles = [.. step.ScrewHoles, hole] };
            else
                steps.Add(new(steps.Count == 0 ? 1 : steps[^1].Last + 1, [], [hole]));
        }
        return steps;

        static object SetUp(Drilling drilling) =>
            (drilling.Operation.Face, drilling.Bore.Bit, drilling.Bore.BitChoice.Kind, drilling.Collar, drilling.Bore.RakeDegrees);
    }

    /// <summary>
    /// True where another post is drilled just as this one is: the same timber, faces, marks, bits, depths, rakes, screw holes and rope.
    /// Only the names of rows and neighbours may be others, and the way along the line.
    /// </summary>
    public bool IsDrilledLike(PostWork other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Timber(this).Equals(Timber(other)) && Holes(this).SequenceEqual(Holes(other));

        static object Timber(PostWork work) => (work.Post.Shape, work.Post.Across, work.Post.Height, work.Post.Buried, work.Post.Turn, work.Datum);

        static IEnumerable<object> Holes(PostWork work)
        {
            var (drillings, holes) = (work.Drillings(), work.ScrewHoles);
            var neighbours = drillings.Select(drilling => drilling.Operation.Face.Neighbour).Concat(holes.Select(hole => hole.Face.Neighbour)).Distinct().ToList();
            return [.. drillings.Select(Bored), .. holes.Select(Screwed)];

            object Bored(Drilling drilling) => (
                Seen(drilling.Operation.Face),
                drilling.Bore.Bit,
                drilling.Bore.BitChoice.Kind,
                drilling.Mark,
                drilling.Operation.Depth,
                drilling.Collar,
                drilling.Operation.Face.Neighbour == work.After ? drilling.Bore.RakeDegrees : -drilling.Bore.RakeDegrees,
                drilling.Bore.Rope);

            object Screwed(Fixing hole) => (Seen(hole.Face), hole.Mark, hole.Driven);

            // A neighbour counts by when it is first named, whatever it is called and whichever way along the line it is.
            object Seen(Face face) => (face.Sight, neighbours.IndexOf(face.Neighbour));
        }
    }

    /// <summary>The screws from the top row down.</summary>
    public static IEnumerable<Fixing> FromTheTop(IEnumerable<Fixing> fixings) => fixings.OrderByDescending(fixing => fixing.RowHeight);

    /// <summary>
    /// The drillings in the order that changes bits least: by bit, the largest first, then face by face so that the post is
    /// turned least, then from the top down.
    /// </summary>
    public IReadOnlyList<Drilling> Drillings()
    {
        var faces = Bores.SelectMany(bore => bore.Operations).Select(operation => operation.Face).Distinct().ToList();
        return
        [
            .. Bores.SelectMany(bore => bore.Operations.Select(operation => (Bore: bore, Operation: operation)))
                .OrderByDescending(x => x.Bore.Bit)
                .ThenBy(x => x.Bore.BitChoice.Kind)
                .ThenBy(x => faces.IndexOf(x.Operation.Face))
                .ThenByDescending(x => x.Bore.Height)
                .Select((x, i) => new Drilling(i + 1, x.Bore, x.Operation)),
        ];
    }

    /// <summary>The work at every post of a job, along the lines.</summary>
    public static IEnumerable<PostWork> Of(JobTakeoff takeoff)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        var bores = takeoff.Bores.ToLookup(bore => bore.Post.Mark);
        var fixings = takeoff.Fixings.ToLookup(fixing => fixing.Post.Mark);
        var warnings = takeoff.Warnings.Where(warning => warning.Post is not null).ToLookup(warning => warning.Post);
        return takeoff.Job.Lines.SelectMany(line => line.Posts.Select((post, i) => new PostWork(
            post,
            line.Mark,
            line.Before(i),
            line.After(i),
            [.. bores[post.Mark]],
            [.. fixings[post.Mark]],
            [.. warnings[post.Mark]],
            takeoff.Job.Datum)));
    }
}

/// <summary>A bore of a post, by which it can be found again: its row, and its number among the row's bores there.</summary>
/// <param name="Bore">The bore.</param>
/// <param name="Number">From 1, in the order of the takeoff.</param>
/// <param name="HasOther">True where its row has another bore there.</param>
public sealed record NumberedBore(Bore Bore, int Number, bool HasOther);

/// <summary>What a driller does without changing anything: drillings from one face, or screw holes in one face. One of the two lists is empty.</summary>
/// <param name="First">The number of its first hole on the ticket, from 1; screw holes are numbered on after the drillings.</param>
/// <param name="Drillings">Its drillings.</param>
/// <param name="ScrewHoles">Its screw holes.</param>
public sealed record DrillStep(int First, IReadOnlyList<Drilling> Drillings, IReadOnlyList<Fixing> ScrewHoles)
{
    /// <summary>The number of its last hole.</summary>
    public int Last => First + Drillings.Count + ScrewHoles.Count - 1;

    /// <summary>The face that is drilled.</summary>
    public Face Face => Drillings is [var drilling, ..] ? drilling.Operation.Face : ScrewHoles[0].Face;
}

/// <summary>One drilling on a ticket.</summary>
/// <param name="Number">Its place in the order, from 1.</param>
/// <param name="Bore">The bore.</param>
/// <param name="Operation">The face, the mark, the depth and the stop collar.</param>
public sealed record Drilling(int Number, Bore Bore, BoreOperation Operation)
{
    /// <summary>Height of the centre mark on the face above the ground.</summary>
    public Length Mark => Operation.Mark;

    /// <summary>Where to set the stop collar.</summary>
    public Length Collar => Operation.Collar;
}
