using System.Security.Cryptography;
using System.Text;
using CutShop.Takeoff;

namespace CutShop.Shop;

/// <summary>What becomes of a piece or a post when a job changes.</summary>
public enum ChangeKind
{
    /// <summary>It stays as it is, made or not.</summary>
    Kept,

    /// <summary>It is made anew in another form.</summary>
    Changed,

    /// <summary>It is new.</summary>
    Added,

    /// <summary>It is no longer wanted.</summary>
    Gone,
}

/// <summary>One piece or post in a change.</summary>
/// <param name="Kind">What becomes of it.</param>
/// <param name="Name">The piece's run, or the post's mark.</param>
/// <param name="Was">What it was; empty where it is new.</param>
/// <param name="Becomes">What it becomes; empty where it goes.</param>
/// <param name="State">Its ticket's state until now; empty where it has none.</param>
public sealed record ChangedThing(ChangeKind Kind, string Name, string Was, string Becomes, string State)
{
    /// <summary>True where it was cut or drilled already and is no longer wanted so.</summary>
    public bool BecomesSurplus => Kind is ChangeKind.Changed or ChangeKind.Gone && TicketStates.IsMade(State);
}

/// <summary>What changes in a stored job, to look at before it is accepted.</summary>
/// <param name="Number">The job's number.</param>
/// <param name="IsCancelled">True where the job was cancelled and cannot change.</param>
/// <param name="Facts">What else changes: customer, due date, lots.</param>
/// <param name="Pieces">The pieces.</param>
/// <param name="Posts">The posts.</param>
public sealed record JobChange(
    string Number, bool IsCancelled, IReadOnlyList<string> Facts, IReadOnlyList<ChangedThing> Pieces, IReadOnlyList<ChangedThing> Posts)
{
    /// <summary>True where the job is the same as stored.</summary>
    public bool IsNothing => Facts.Count == 0 && Pieces.Concat(Posts).All(thing => thing.Kind == ChangeKind.Kept);

    /// <summary>What was made already and becomes surplus.</summary>
    public IEnumerable<ChangedThing> Surplus => Pieces.Concat(Posts).Where(thing => thing.BecomesSurplus);

    /// <summary>Stands for everything shown here: if any of it is different when the change is accepted, it is shown again instead.</summary>
    public string Token
    {
        get
        {
            var shown = string.Join('\n', Facts.Concat(Pieces.Concat(Posts).Select(thing => thing.ToString())));
            return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(shown)).AsSpan(0, 12));
        }
    }

    /// <summary>How many things have a kind.</summary>
    public static int Count(IEnumerable<ChangedThing> things, ChangeKind kind) => things.Count(thing => thing.Kind == kind);

    /// <summary>Holds a stored job against its next form.</summary>
    internal static JobChange Between(StoredWork was, JobTakeoff next)
    {
        var change = new JobChange(
            next.Job.Number,
            was.IsCancelled,
            FactsOf(was.Takeoff.Job, next.Job),
            Things(was.Pieces.ToDictionary(piece => piece.Run, piece => (Text(piece.Piece), piece.State)), next.Pieces.Select(piece => (piece.Run, Text(piece)))),
            Things(was.Posts.ToDictionary(post => post.Post.Mark, post => (PostText(was.Takeoff, post.Post), post.State)), next.Job.Posts.Select(post => (post.Mark, PostText(next, post)))));
        return change.IsNothing && was.JobFile != JobFileWriter.Write(next.Job)
            ? change with { Facts = ["Figures, such as a sag, that make no piece and no post different"] }
            : change;
    }

    private static List<ChangedThing> Things(Dictionary<string, (string Text, string State)> was, IEnumerable<(string Name, string Text)> next)
    {
        var things = new List<ChangedThing>();
        var seen = new HashSet<string>();
        foreach (var (name, text) in next)
        {
            seen.Add(name);
            if (!was.TryGetValue(name, out var old))
                things.Add(new(ChangeKind.Added, name, "", text, ""));
            else
                things.Add(new(old.Text == text ? ChangeKind.Kept : ChangeKind.Changed, name, old.Text, text, old.State));
        }
        things.AddRange(was.Where(pair => !seen.Contains(pair.Key)).Select(pair => new ChangedThing(ChangeKind.Gone, pair.Key, pair.Value.Text, "", pair.Value.State)));
        return things;
    }

    private static List<string> FactsOf(Job was, Job next)
    {
        var facts = new List<string>();
        if (was.Customer != next.Customer)
            facts.Add($"Customer: {was.Customer} → {next.Customer}");
        if (was.Due != next.Due)
            facts.Add($"Due: {Day(was.Due)} → {Day(next.Due)}");
        if (was.OneLot != next.OneLot)
            facts.Add(next.OneLot ? "All rope from one lot now" : "Rope from any lots now");
        return facts;
    }

    private static string Day(DateOnly? day) => day is { } given ? $"{given:yyyy-MM-dd}" : "no day";

    /// <summary>Everything that makes a piece what it is.</summary>
    private static string Text(Piece piece) =>
        $"{LengthText.Brief(piece.Rope.Diameter)} {piece.Rope.MaterialName}, {LengthText.Exact(piece.Cut)}, {piece.From.Mark} to {piece.To.Mark}";

    /// <summary>Everything that makes a post what it is: its size and every drilling.</summary>
    private static string PostText(JobTakeoff takeoff, Post post)
    {
        var bores = takeoff.Bores.Where(bore => bore.Post.Mark == post.Mark).Select(bore =>
            $"{bore.Run}: {TakeoffJson.Word(bore.Kind)}, {LengthText.Brief(bore.Bit)} at {LengthText.Brief(bore.Height)}, {string.Join(" and ", bore.Operations.Select(drilling => $"{drilling.Face} {LengthText.Exact(drilling.Depth)} deep"))}");
        return $"{(post.Shape == PostShape.Square ? "square" : "round")} {LengthText.Brief(post.Across)}, {LengthText.Brief(post.Height)} high; {string.Join("; ", bores.DefaultIfEmpty("no bores"))}";
    }
}
