using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Result;

/// <summary>
/// Parts as text: what the shop promised for a piece, a post, or the job's frame, exact, in a form that any later program reads.
/// docs/parts.md describes it.
/// </summary>
public static class PartText
{
    /// <summary>The number of the form that is written.</summary>
    public const int Format = 3;

    /// <summary>The number of the form in which an older program's bores are kept.</summary>
    public const int OldBoresFormat = 0;

    private static readonly PartJson Json = new(new JsonSerializerOptions(PartJson.Default.Options)
    {
        // A part is stored, never a piece of a web page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <summary>Writes the work of a piece.</summary>
    public static string Write(PieceWork work) => Text(Document(work), Json.PieceDocument);

    /// <summary>Writes the work at a post.</summary>
    public static string Write(PostWork work) => Text(Document(work), Json.PostDocument);

    /// <summary>Writes a job's frame.</summary>
    public static string Write(JobFrame frame) => Text(Document(frame), Json.FrameDocument);

    /// <summary>Writes a whole takeoff as one document.</summary>
    public static string Write(JobTakeoff takeoff)
    {
        ArgumentNullException.ThrowIfNull(takeoff);
        var job = takeoff.Job;
        return Text(
            new TakeoffDocument(
                job.Number,
                job.Customer,
                job.Due is { } due ? IsoDate.Text(due) : null,
                job.OneLot,
                Document(JobFrame.Of(takeoff)),
                [.. PieceWork.Of(takeoff).Select(Document)],
                [.. PostWork.Of(takeoff).Select(Document)]),
            Json.TakeoffDocument);
    }

    /// <summary>Writes what an older program kept of a post's bores.</summary>
    public static string Write(IReadOnlyList<OldBore> bores) => Text(bores, Json.IReadOnlyListOldBore);

    private static PieceDocument Document(PieceWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        var piece = work.Piece;
        var (sizes, spans, screws) = (new Repeated<SizeDocument>(), new Repeated<SpanDocument>(), new Repeated<ScrewDocument>());
        var fixings = work.Fixings.ToDictionary(fixing => fixing.Post.Mark);
        var sections = spans.IndexesOf(piece.Sections.Select(SpanDocument.Of));
        var posts = piece.AtPosts.Select(at => new AtPostDocument(
            at.Post.Mark,
            // What is below ground is no matter of the rope's.
            sizes.IndexOf(SizeDocument.Of(at.Post with { Buried = null })),
            TurnDocument.Of(at.Post.Turn),
            PartCodes.AtPost.Of(at.Kind),
            at.Treatment.HalfTurns,
            at.Treatment.Side == WrapSide.Inside,
            at.Length,
            fixings.TryGetValue(at.Post.Mark, out var fixing) ? ScrewsDocument.Of(fixing, screws) : null)).ToList();
        return new(
            piece.Run,
            piece.Line,
            piece.Row,
            piece.Height,
            RopeDocument.Of(piece.Rope),
            piece.First,
            piece.Net,
            piece.Cut,
            piece.WeightLb,
            sizes.All,
            spans.All,
            screws.AnyOrNull,
            sections,
            posts,
            piece.IsAsMeasured);
    }

    private static PostDocument Document(PostWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        var (holes, screws) = (new Repeated<BoreDocument>(), new Repeated<ScrewDocument>());
        var bores = work.Bores.ToDictionary(bore => bore.Run);
        var fixings = work.Fixings.ToDictionary(fixing => fixing.Run);
        var runs = work.Bores.Select(bore => (bore.Row, bore.Run, bore.Height))
            .Concat(work.Fixings.Where(fixing => !bores.ContainsKey(fixing.Run)).Select(fixing => (fixing.Row, fixing.Run, Height: fixing.RowHeight)))
            .Select(at => new RunAtPostDocument(
                at.Row,
                at.Run,
                at.Height,
                bores.TryGetValue(at.Run, out var bore) ? holes.IndexOf(Document(bore)) : null,
                fixings.TryGetValue(at.Run, out var fixing) ? ScrewsDocument.Of(fixing, screws) : null))
            .ToList();
        return new(
            work.Post.Mark,
            work.Line,
            work.Before,
            work.After,
            SizeDocument.Of(work.Post),
            TurnDocument.Of(work.Post.Turn),
            DatumDocument.Of(work.Datum),
            holes.AnyOrNull,
            screws.AnyOrNull,
            runs,
            WarningDocument.AnyOrNull(work.Warnings));
    }

    private static FrameDocument Document(JobFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var totals = frame.Totals;
        return new(
            RopeDocument.Of(frame.Rope),
            frame.Allowances.Shrink.Millionths,
            frame.Allowances.PerPiece,
            frame.Allowances.RoundUp,
            DatumDocument.Of(frame.Datum),
            [.. frame.Lines.Select(Document)],
            WarningDocument.AnyOrNull(frame.Warnings),
            new(totals.Pieces, totals.Bores, totals.Screws, totals.Cut));
    }

    /// <summary>Reads the work of a piece.</summary>
    /// <param name="text">The text.</param>
    /// <param name="format">The number of its form.</param>
    /// <exception cref="InvalidDataException">It is not such a text, or of a form that this program does not know.</exception>
    public static PieceWork ReadPiece(string text, int format)
    {
        var document = Read(text, format, Json.PieceDocument);
        return Sound(() => WorkOf(document));
    }

    /// <summary>Reads the work at a post.</summary>
    /// <inheritdoc cref="ReadPiece"/>
    public static PostWork ReadPost(string text, int format)
    {
        var document = Read(text, format, Json.PostDocument);
        return Sound(() => WorkOf(document));
    }

    /// <summary>Reads a job's frame.</summary>
    /// <inheritdoc cref="ReadPiece"/>
    public static JobFrame ReadFrame(string text, int format)
    {
        var document = Read(text, format, Json.FrameDocument);
        return Sound(() => FrameOf(document));
    }

    /// <summary>Reads a whole takeoff.</summary>
    /// <inheritdoc cref="ReadPiece"/>
    public static JobTakeoff ReadTakeoff(string text, int format)
    {
        var document = Read(text, format, Json.TakeoffDocument);
        return Sound(() => FrameOf(document.Frame).ToTakeoff(
            new(document.Number, document.Customer, document.Due is { } due ? IsoDate.Read(due) : null, document.OneLot),
            [.. document.Pieces.Select(WorkOf)],
            [.. document.Posts.Select(WorkOf)]));
    }

    /// <summary>Reads what an older program kept of a post's bores.</summary>
    /// <inheritdoc cref="ReadPiece"/>
    public static IReadOnlyList<OldBore> ReadOldBores(string text, int format) =>
        Read(text, format, Json.IReadOnlyListOldBore, OldBoresFormat, OldBoresFormat);

    private static PieceWork WorkOf(PieceDocument document)
    {
        var posts = document.Posts.Select(at => document.Sizes[at.Size].ToPost(at.Post, TurnDocument.Read(at.Turn))).ToList();
        var piece = new Piece(
            document.Run,
            document.Line,
            document.Row,
            document.HeightNm,
            document.Rope.ToRope(),
            document.First,
            document.NetNm,
            document.CutNm,
            document.WeightLb,
            [.. Enumerable.Range(0, posts.Count - 1).Select(i => document.Spans[document.Sections?[i] ?? 0].ToSection(posts[i], posts[i + 1]))],
            [.. document.Posts.Select((at, i) => AtPostOf(at, posts[i]))])
        {
            IsAsMeasured = document.AsMeasured,
        };
        return new PieceWork(piece, [.. document.Posts.Index().Where(at => at.Item.Screws is not null)
            .Select(at => at.Item.Screws!.ToFixing(posts[at.Index], piece.Row, piece.Height, piece.Run, document.Screws ?? []))]);
    }

    private static PostWork WorkOf(PostDocument document)
    {
        var post = document.Size.ToPost(document.Post, TurnDocument.Read(document.Turn));
        return new PostWork(
            post,
            document.Line,
            document.Before,
            document.After,
            [.. document.Runs.Where(run => run.Bore is not null).Select(run => BoreOf(run, (document.Bores ?? [])[run.Bore!.Value], post))],
            [.. document.Runs.Where(run => run.Screws is not null).Select(run => run.Screws!.ToFixing(post, run.Row, run.HeightNm, run.Run, document.Screws ?? []))],
            [.. (document.Warnings ?? []).Select(warning => warning.ToWarning(post.Mark))],
            DatumDocument.Read(document.Datum));
    }

    private static JobFrame FrameOf(FrameDocument document) => new(
            document.Rope.ToRope(),
            new(Share.FromMillionths(document.ShrinkMillionths), document.PerPieceNm, document.RoundUpNm),
            [.. document.Lines.Select(LineOf)],
            [.. (document.Warnings ?? []).Select(warning => warning.ToWarning(post: null))],
            new(document.Totals.Pieces, document.Totals.Bores, document.Totals.Screws, document.Totals.CutNm),
            DatumDocument.Read(document.Datum));

    private static AtPost AtPostOf(AtPostDocument at, Post post)
    {
        var kind = PartCodes.AtPost.Read(at.Kind);
        var treatment = kind switch
        {
            AtPostKind.Stopped => Treatment.Stopped,
            AtPostKind.Knot => Treatment.Knot,
            AtPostKind.Wrap => Treatment.Wrap(at.HalfTurns, at.Inside ? WrapSide.Inside : WrapSide.Outside),
            _ => Treatment.Bored,
        };
        return new(post, kind, treatment, at.LengthNm);
    }

    private static BoreDocument Document(Bore bore) => new(
        PartCodes.AtPost.Of(bore.Kind),
        RopeDocument.Of(bore.Rope),
        bore.Bit,
        PartCodes.Bit.Of(bore.BitChoice.Kind),
        !bore.BitChoice.OnRack,
        bore.Wall,
        bore.RakeDegrees,
        [.. bore.Operations.Select(operation => DrillingDocument.Of(operation, bore.Height))]);

    private static Bore BoreOf(RunAtPostDocument run, BoreDocument bore, Post post) => new(
        post,
        run.Row,
        run.Run,
        PartCodes.AtPost.Read(bore.Kind),
        bore.Rope.ToRope(),
        bore.BitNm,
        new(PartCodes.Bit.Read(bore.Bit), !bore.NotOnRack),
        run.HeightNm,
        bore.WallNm,
        bore.RakeDegrees,
        [.. bore.Drillings.Select(drilling => drilling.ToOperation(run.HeightNm))]);

    private static LineDocument Document(Line line)
    {
        var (sizes, spacings) = (new Repeated<SizeDocument>(), new Repeated<SectionDocument>());
        var turns = line.Posts.Index().Where(post => post.Item.Turn is not null).Select(post => new TurnAtDocument(post.Index, TurnDocument.Of(post.Item.Turn)!)).ToList();
        return new(
            line.Mark,
            [.. line.Posts.Select(post => post.Mark)],
            sizes.All,
            sizes.IndexesOf(line.Posts.Select(SizeDocument.Of)),
            turns.Count == 0 ? null : turns,
            spacings.All,
            spacings.IndexesOf(line.Sections.Select(SectionDocument.Of)),
            [.. line.Rows.Select(Document)]);
    }

    private static RowDocument Document(Row row)
    {
        var treatments = new Repeated<TreatmentDocument>();
        var at = treatments.IndexesOf(row.Treatments.Select(TreatmentDocument.Of));
        return new(row.Mark, row.Height, LooseDocument.Of(row.Hang), row.Rope is { } rope ? RopeDocument.Of(rope) : null, treatments.All, at);
    }

    private static Line LineOf(LineDocument line)
    {
        var turns = (line.Turns ?? []).ToDictionary(turn => turn.Post, turn => TurnDocument.Read(turn.Turn));
        return new(
            line.Mark,
            [.. line.Posts.Select((mark, i) => line.Sizes[line.PostSizes?[i] ?? 0].ToPost(mark, turns.GetValueOrDefault(i)))],
            [.. Enumerable.Range(0, line.Posts.Count - 1).Select(i => line.Spacings[line.Sections?[i] ?? 0].ToSection())],
            [.. line.Rows.Select(row => RowOf(row, line.Posts.Count))]);
    }

    private static Row RowOf(RowDocument row, int posts)
    {
        var treatments = row.Treatments.Select(treatment => treatment.ToTreatment()).ToList();
        return new(row.Mark, row.HeightNm, row.Hang?.ToHang(), [.. Enumerable.Range(0, posts).Select(i => treatments[row.At?[i] ?? 0])], row.Rope?.ToRope());
    }

    private static string Text<T>(T document, JsonTypeInfo<T> type) => JsonSerializer.Serialize(document, type);

    private static T Read<T>(string text, int format, JsonTypeInfo<T> type, int oldest = 1, int newest = Format)
        where T : class
    {
        ArgumentNullException.ThrowIfNull(text);
        if (format < oldest || format > newest)
            throw new InvalidDataException($"It is of format {format}; this program reads formats {oldest} to {newest}.");
        try
        {
            return JsonSerializer.Deserialize(text, type) ?? throw new InvalidDataException("It is empty.");
        }
        catch (JsonException e)
        {
            throw new InvalidDataException($"It is not readable: {e.Message}", e);
        }
    }

    /// <summary>Reads what a document means; an index or a field that is not there makes it unreadable.</summary>
    private static T Sound<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception e) when (e is ArgumentException or KeyNotFoundException or OverflowException)
        {
            throw new InvalidDataException($"It is not whole: {e.Message}", e);
        }
    }
}
