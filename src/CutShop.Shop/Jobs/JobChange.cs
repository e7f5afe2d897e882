using System.Security.Cryptography;
using System.Text;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Shop.Jobs;

/// <summary>What becomes of a piece or a post when a job changes.</summary>
public enum ChangeKind
{
    /// <summary>It stays as it is, made or not: all work on its ticket is the same.</summary>
    Kept,

    /// <summary>It is made again in another form.</summary>
    Changed,

    /// <summary>It is new.</summary>
    Added,

    /// <summary>It is no longer wanted.</summary>
    Gone,
}

/// <summary>One piece or post in a change.</summary>
/// <param name="Kind">What becomes of it.</param>
/// <param name="Name">The piece's run, or the post's mark.</param>
/// <param name="State">Its ticket's state until now; empty where it has none.</param>
public abstract record ChangedThing(ChangeKind Kind, string Name, string State)
{
    /// <summary>What of its work differs; empty where it is kept, added or gone.</summary>
    public IReadOnlyList<WorkDifference> Differences { get; init; } = [];

    /// <summary>What can be done to use it all the same, where it was made and is no longer wanted so.</summary>
    public IReadOnlyList<Saving> Savings { get; init; } = [];

    /// <summary>True where it is kept and yet its part is another: how it hangs on site, or which run goes through it.</summary>
    public bool IsRevised { get; init; }

    /// <summary>True where it is not what it was.</summary>
    public bool IsTouched => Kind != ChangeKind.Kept || IsRevised;

    /// <summary>True where it was cut or drilled already, or is begun at the bench so that it cannot be as it was.</summary>
    public bool IsMade { get; init; }

    /// <summary>True where it was cut or drilled already and is no longer wanted so.</summary>
    public bool BecomesSurplus => Kind is ChangeKind.Changed or ChangeKind.Gone && IsMade;

    /// <summary>The text of the part that it has then; empty where it goes.</summary>
    internal abstract string PartThen { get; }
}

/// <summary>A piece in a change.</summary>
/// <param name="Kind">What becomes of it.</param>
/// <param name="Name">Its run.</param>
/// <param name="State">Its ticket's state until now; empty where it has none.</param>
/// <param name="Was">What it was; null where it is new.</param>
/// <param name="Becomes">What it becomes; null where it goes.</param>
public sealed record ChangedPiece(ChangeKind Kind, string Name, string State, PieceWork? Was, PieceWork? Becomes) : ChangedThing(Kind, Name, State)
{
    internal override string PartThen => Becomes is null ? "" : PartText.Write(Becomes);
}

/// <summary>A post in a change.</summary>
/// <param name="Kind">What becomes of it.</param>
/// <param name="Name">Its mark.</param>
/// <param name="State">Its ticket's state until now; empty where it has none.</param>
/// <param name="Was">What it was; null where it is new.</param>
/// <param name="Becomes">What it becomes; null where it goes.</param>
public sealed record ChangedPost(ChangeKind Kind, string Name, string State, PostWork? Was, PostWork? Becomes) : ChangedThing(Kind, Name, State)
{
    internal override string PartThen => Becomes is null ? "" : PartText.Write(Becomes);
}

/// <summary>What changes in a stored job, to look at before it is accepted.</summary>
/// <param name="Number">The job's number.</param>
/// <param name="IsCancelled">True where the job was cancelled and cannot change.</param>
/// <param name="Facts">What else changes: customer, due date, lots.</param>
/// <param name="Pieces">The pieces: those of the job's new form in their order, then those that go.</param>
/// <param name="Posts">The posts, likewise.</param>
public sealed record JobChange(
    string Number, bool IsCancelled, IReadOnlyList<Sentence> Facts, IReadOnlyList<ChangedPiece> Pieces, IReadOnlyList<ChangedPost> Posts)
{
    /// <summary>All pieces and posts.</summary>
    public IEnumerable<ChangedThing> Things => Pieces.Concat<ChangedThing>(Posts);

    /// <summary>True where the job is the same as stored.</summary>
    public bool IsNothing => Facts.Count == 0 && !TouchesWork;

    /// <summary>True where any piece or post is another then.</summary>
    public bool TouchesWork => Things.Any(thing => thing.IsTouched);

    /// <summary>What was made already and becomes surplus.</summary>
    public IEnumerable<ChangedThing> Surplus => Things.Where(thing => thing.BecomesSurplus);

    /// <summary>Stands for everything shown here: if any of it is different when the change is accepted, it is shown again instead.</summary>
    public string Token { get; private init; } = "";

    /// <summary>How many things have a kind.</summary>
    public static int Count(IEnumerable<ChangedThing> things, ChangeKind kind) => things.Count(thing => thing.Kind == kind);

    /// <summary>Compares a stored job with the form that a draft gives it. What the draft does not touch stays as it was promised, whatever today's rules would make of it.</summary>
    internal static JobChange ByDraft(StoredWork was, JobTakeoff next, ShopTables tables)
    {
        var change = Between(was, next, was.TakeoffBy(tables));
        return change.IsNothing && !JobFileWriter.IsOf(was.JobFile, next.Job)
            ? (change with { Facts = [JobReplies.Of("OtherValues")] }).Sealed()
            : change;
    }

    /// <summary>Compares a stored job with what today's rules make of its file.</summary>
    internal static JobChange ByRules(StoredWork was, JobTakeoff next) => Between(was, next, today: null);

    private static JobChange Between(StoredWork was, JobTakeoff next, JobTakeoff? today)
    {
        var pieces = PiecesOf(was, next, today);
        return new JobChange(was.Head.Number, was.IsCancelled, FactsOf(was.Head, next.Job), pieces, PostsOf(was, next, today)).Sealed();
    }

    private static List<ChangedPiece> PiecesOf(StoredWork was, JobTakeoff next, JobTakeoff? today)
    {
        var stored = was.Pieces.ToDictionary(piece => piece.Work.Piece.Run);
        var untouched = (today is null ? [] : PieceWork.Of(today)).ToDictionary(work => work.Piece.Run);
        var changed = new List<ChangedPiece>();
        foreach (var work in PieceWork.Of(next))
        {
            var run = work.Piece.Run;
            if (!stored.Remove(run, out var old))
                changed.Add(new(ChangeKind.Added, run, "", Was: null, work));
            else if (untouched.GetValueOrDefault(run) is { } same && WorkDifferences.Between(same, work).Count == 0)
                changed.Add(Kept(old, PartText.Write(same) == PartText.Write(work) ? old.Work : Promised(old.Work, work)));
            else if (WorkDifferences.Between(old.Work, work) is { Count: > 0 } differences)
                changed.Add(new(ChangeKind.Changed, run, old.State, old.Work, work) { Differences = differences, IsMade = old.IsMade });
            else
                changed.Add(Kept(old, work));
        }
        changed.AddRange(stored.Values.Select(old => new ChangedPiece(ChangeKind.Gone, old.Work.Piece.Run, old.State, old.Work, Becomes: null) { IsMade = old.IsMade }));
        var wanted = changed.Where(piece => piece.Kind is ChangeKind.Added or ChangeKind.Changed).Select(piece => piece.Becomes!).ToList();
        return [.. changed.Select(piece => piece.BecomesSurplus ? piece with { Savings = Shop.Jobs.Savings.Of(piece.Was!, piece.Becomes, wanted) } : piece)];
    }

    private static List<ChangedPost> PostsOf(StoredWork was, JobTakeoff next, JobTakeoff? today)
    {
        var stored = was.Posts.ToDictionary(post => post.Work.Post.Mark);
        var untouched = (today is null ? [] : PostWork.Of(today)).ToDictionary(work => work.Post.Mark);
        var changed = new List<ChangedPost>();
        foreach (var work in PostWork.Of(next))
        {
            var mark = work.Post.Mark;
            if (!stored.Remove(mark, out var old))
                changed.Add(new(ChangeKind.Added, mark, "", Was: null, work));
            else if (untouched.GetValueOrDefault(mark) is { } same && WorkDifferences.Between(same, work).Count == 0)
                changed.Add(Kept(old, PartText.Write(same) == PartText.Write(work) ? old.Work : Promised(old.Work, work)));
            else if (WorkDifferences.Between(old.Work, work) is { Count: > 0 } differences)
                changed.Add(new(ChangeKind.Changed, mark, old.State, old.Work, work) { Differences = differences, IsMade = old.IsMade });
            else
                changed.Add(Kept(old, Promised(old.Work, work)));
        }
        changed.AddRange(stored.Values.Select(old => new ChangedPost(ChangeKind.Gone, old.Work.Post.Mark, old.State, old.Work, Becomes: null) { IsMade = old.IsMade }));
        return [.. changed.Select(post => post is { BecomesSurplus: true, State: TicketStates.Drilled, Becomes: { } becomes } ? post with { Savings = Shop.Jobs.Savings.Of(post.Was!, becomes) } : post)];
    }

    private static ChangedPiece Kept(StoredPieceWork old, PieceWork becomes) =>
        new(ChangeKind.Kept, old.Work.Piece.Run, old.State, old.Work, becomes) { IsRevised = PartText.Write(old.Work) != PartText.Write(becomes), IsMade = old.IsMade };

    private static ChangedPost Kept(StoredPostWork old, PostWork becomes) =>
        new(ChangeKind.Kept, old.Work.Post.Mark, old.State, old.Work, becomes) { IsRevised = PartText.Write(old.Work) != PartText.Write(becomes), IsMade = old.IsMade };

    /// <summary>A piece that is cut as it was promised and hangs as the change has it.</summary>
    private static PieceWork Promised(PieceWork old, PieceWork next)
    {
        var (was, piece) = (old.Piece, next.Piece);
        return next with { Piece = piece with { Cut = was.Cut, Net = was.Cut == piece.Cut ? piece.Net : was.Net, WeightLb = was.WeightLb } };
    }

    /// <summary>A post that is drilled as it was promised; its neighbours, its runs and its warnings are as the change has them.</summary>
    private static PostWork Promised(PostWork old, PostWork next) =>
        old.Bores.Count != next.Bores.Count || old.Fixings.Count != next.Fixings.Count
            ? next
            : next with
            {
                Bores = [.. old.Bores.Zip(next.Bores, (was, bore) => was with { Run = bore.Run, Rope = bore.Rope })],
                Fixings = [.. old.Fixings.Zip(next.Fixings, (was, fixing) => was with { Run = fixing.Run })],
            };

    private static List<Sentence> FactsOf(JobHead was, Job next)
    {
        var facts = new List<Sentence>();
        if (was.Customer != next.Customer)
            facts.Add(JobReplies.Of("CustomerChanges", was.Customer, next.Customer));
        if (was.Due != next.Due)
            facts.Add(JobReplies.Of("DueChanges", Day(was.Due), Day(next.Due)));
        if (was.OneLot != next.OneLot)
            facts.Add(JobReplies.Of(next.OneLot ? "OneLotNow" : "AnyLotsNow"));
        return facts;
    }

    private static object Day(DateOnly? day) => day is { } given ? IsoDate.Text(given) : JobReplies.Of("NoDay");

    private JobChange Sealed()
    {
        var shown = string.Join('\n', Facts.Select(fact => fact.ToString()).Concat(Things.Select(thing => $"{(int)thing.Kind} {thing.Name} {thing.State}{(thing.IsMade ? " made" : "")} {thing.PartThen}")));
        return this with { Token = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(shown)).AsSpan(0, 12)) };
    }
}
