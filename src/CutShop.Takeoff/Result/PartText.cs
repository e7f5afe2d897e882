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
        // Along the piece, one for a post at most; a ring comes to its first post twice.
        var fixings = new Queue<Fixing>(work.Fixings);
        var sections = spans.IndexesOf(piece.Sections.Select(SpanDocument.Of));
        var posts = piece.AtPosts.Select(at => new AtPostDocument(
            at.Post.Mark,
            // What is below ground is no matter of the rope's.
            sizes.IndexOf(SizeDocument.Of(at.Post with { Buried = null })),
            TurnDocument.Of(at.Post),
            PartCodes.AtPost.Of(at.Kind),
            at.Treatment.HalfTurns,
            at.Treatment.Side == WrapSide.Inside,
            EyeDocument.Of(at.Treatment),
            at.Length,
            at.Height,
            fixings.TryPeek(out var next) && next.Post.Mark == at.Post.Mark ? ScrewsDocument.Of(fixings.Dequeue(), screws) : null)).ToList();
        return new(
            piece.Run,
            piece.Line,
            piece.Row,
            piece.Height,
            RopeDocument.Of(piece.Rope),
            piece.First,
            piece.Net,
            piece.Cut,
            piece.Trim,
            piece.IsSetOut,
            piece.WeightLb,
            sizes.All,
            spans.All,
            screws.AnyOrNull,
            sections,
            posts,
            piece.IsAsMeasured,
            piece.Manner is null or WettingManner.Trimmed ? null : PartCodes.Wetting.Of(piece.Manner.Value));
    }

    private static PostDocument Document(PostWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        var (holes, screws) = (new Repeated<BoreDocument>(), new Repeated<ScrewDocument>());
        // A ring ends where it starts: its run has two bores in that post, or two wraps round it.
        var single = work.Bores.CountBy(bore => bore.Run).Concat(work.Fixings.CountBy(fixing => fixing.Run)).Where(run => run.Value > 1).Select(run => run.Key).ToHashSet();
        var fixings = work.Fixings.Where(fixing => !single.Contains(fixing.Run)).ToDictionary(fixing => fixing.Run);
        var bored = work.Bores.Select(bore => bore.Run).ToHashSet();
        var runs = work.Bores.Select(bore => new RunAtPostDocument(bore.Row, bore.Run, bore.Height, holes.IndexOf(Document(bore)), Screws: Screws(fixings.GetValueOrDefault(bore.Run))))
            .Concat(work.Fixings.Where(fixing => single.Contains(fixing.Run) || !bored.Contains(fixing.Run))
                .Select(fixing => new RunAtPostDocument(fixing.Row, fixing.Run, fixing.RowHeight, Bore: null, Screws(fixing))))
            .ToList();
        return new(
            work.Post.Mark,
            work.Line,
            work.Before,
            work.After,
            SizeDocument.Of(work.Post),
            TurnDocument.Of(work.Post),
            DatumDocument.Of(work.Datum),
            holes.AnyOrNull,
            screws.AnyOrNull,
            runs,
            WarningDocument.AnyOrNull(work.Warnings));

        ScrewsDocument? Screws(Fixing? fixing) => fixing is null ? null : ScrewsDocument.Of(fixing, screws);
    }

    private static FrameDocument Document(JobFrame frame)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var totals = frame.Totals;
        return new(
            RopeDocument.Of(frame.Rope),
            frame.Allowances.Shrink.Millionths,
            frame.Allowances.Wetting?.Loses.Millionths ?? 0,
            frame.Allowances.Wetting is { } wetting ? PartCodes.Wetting.Of(wetting.Manner) : null,
            frame.Longest,
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
        var posts = document.Posts.Select(at => document.Sizes[at.Size].ToPost(at.Post, at.Turn)).ToList();
        var rope = document.Rope.ToRope();
        var piece = new Piece(
            document.Run,
            document.Line,
            document.Row,
            document.HeightNm,
            rope,
            document.First,
            document.NetNm,
            document.CutNm,
            document.WeightLb,
            [.. Enumerable.Range(0, posts.Count - 1).Select(i => document.Spans[document.Sections?[i] ?? 0].ToSection(posts[i], posts[i + 1]))],
            [.. document.Posts.Select((at, i) => AtPostOf(at, posts[i]))])
        {
            Trim = document.TrimNm,
            Manner = !rope.IsNatural ? null : document.Manner is { } manner ? PartCodes.Wetting.Read(manner) : WettingManner.Trimmed,
            IsSetOut = document.SetOut,
            IsAsMeasured = document.AsMeasured,
        };
        return new PieceWork(piece, [.. document.Posts.Index().Where(at => at.Item.Screws is not null)
            .Select(at => at.Item.Screws!.ToFixing(posts[at.Index], piece.Row, at.Item.HeightNm ?? piece.Height, piece.Run, document.Screws ?? []))]);
    }

    private static PostWork WorkOf(PostDocument document)
    {
        var post = document.Size.ToPost(document.Post, document.Turn);
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
            new(Share.FromMillionths(document.ShrinkMillionths), document.PerPieceNm, document.RoundUpNm)
            {
                Wetting = document.Wetting is { } manner ? new(Share.FromMillionths(document.LosesMillionths), PartCodes.Wetting.Read(manner)) : null,
            },
            [.. document.Lines.Select(LineOf)],
            [.. (document.Warnings ?? []).Select(warning => warning.ToWarning(post: null))],
            new(document.Totals.Pieces, document.Totals.Bores, document.Totals.Screws, document.Totals.CutNm),
            DatumDocument.Read(document.Datum))
    {
        Longest = document.LongestNm,
    };

    private static AtPost AtPostOf(AtPostDocument at, Post post)
    {
        var kind = PartCodes.AtPost.Read(at.Kind);
        var treatment = kind switch
        {
            AtPostKind.Stopped => Treatment.Stopped,
            AtPostKind.Knot => Treatment.Knot,
            AtPostKind.Wrap => Treatment.Wrap(at.HalfTurns, at.Inside ? WrapSide.Inside : WrapSide.Outside),
            AtPostKind.Beside => Treatment.Beside,
            AtPostKind.Eye => Treatment.InEye((at.Eye ?? throw new InvalidDataException("An eye has its figures.")).ToEye()),
            _ => Treatment.Bored,
        };
        return new(post, kind, treatment, at.LengthNm) { Height = at.HeightNm };
    }

    private static BoreDocument Document(Bore bore) => new(
        PartCodes.AtPost.Of(bore.Kind),
        RopeDocument.Of(bore.Rope),
        bore.Bit,
        bore.Wanted == bore.Bit ? null : bore.Wanted,
        PartCodes.Bit.Of(bore.BitChoice.Kind),
        !bore.BitChoice.OnRack,
        bore.IsExisting,
        bore.BoredBy == BoredBy.Site,
        bore.IsLevel,
        bore.Wall,
        bore.RakeDegrees,
        bore.SkewDegrees,
        bore.KinkDegrees,
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
        [.. bore.Drillings.Select(drilling => drilling.ToOperation(run.HeightNm))])
    {
        Wanted = bore.WantedNm ?? bore.BitNm,
        IsExisting = bore.Existing,
        BoredBy = bore.OnSite ? BoredBy.Site : BoredBy.Shop,
        IsLevel = bore.Level,
        SkewDegrees = bore.SkewDegrees,
        KinkDegrees = bore.KinkDegrees,
    };

    private static LineDocument Document(Line line)
    {
        var (sizes, spacings) = (new Repeated<SizeDocument>(), new Repeated<SectionDocument>());
        var turns = line.Posts.Index().Where(post => post.Item.Turn is not null).Select(post => new TurnAtDocument(post.Index, TurnDocument.Of(post.Item)!)).ToList();
        return new(
            line.Mark,
            [.. line.Posts.Select(post => post.Mark)],
            sizes.All,
            sizes.IndexesOf(line.Posts.Select(SizeDocument.Of)),
            line.IsClosed,
            CurveDocument.Of(line.Curve),
            turns.Count == 0 ? null : turns,
            spacings.All,
            spacings.IndexesOf(line.Sections.Select(section => SectionDocument.Of(section, line.Drop))),
            [.. line.Rows.Select(Document)]);
    }

    private static RowDocument Document(Row row)
    {
        var treatments = new Repeated<TreatmentDocument>();
        var at = treatments.IndexesOf(row.Treatments.Select(TreatmentDocument.Of));
        return new(row.Mark, row.Height, row.Heights?.Select(height => new HeightAtDocument(height.Key, height.Value)).ToList(), LooseDocument.Of(row.Hang), row.Rope is { } rope ? RopeDocument.Of(rope) : null, treatments.All, at);
    }

    private static Line LineOf(LineDocument line)
    {
        var stations = line.Posts.Count + (line.Closed ? 1 : 0);
        var turns = (line.Turns ?? []).ToDictionary(turn => turn.Post, turn => turn.Turn);
        return new(
            line.Mark,
            [.. line.Posts.Select((mark, i) => line.Sizes[line.PostSizes?[i] ?? 0].ToPost(mark, turns.GetValueOrDefault(i)))],
            [.. Enumerable.Range(0, stations - 1).Select(i => line.Spacings[line.Sections?[i] ?? 0].ToSection())],
            [.. line.Rows.Select(row => RowOf(row, stations))])
        {
            IsClosed = line.Closed,
            Curve = line.Curve?.ToCurve(),
        };
    }

    private static Row RowOf(RowDocument row, int stations)
    {
        var treatments = row.Treatments.Select(treatment => treatment.ToTreatment()).ToList();
        return new(row.Mark, row.HeightNm, row.Hang?.ToHang(), [.. Enumerable.Range(0, stations).Select(i => treatments[row.At?[i] ?? 0])], row.Rope?.ToRope())
        {
            Heights = row.Heights?.ToDictionary(height => height.Post, height => height.HeightNm),
        };
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
