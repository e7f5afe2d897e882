using System.Globalization;
using CutShop.Shop.Orders;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Shop.Tickets;
using CutShop.Takeoff.Intake;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Maintenance;

/// <summary>
/// Fills the parts of a shop that was made before there were any, once. What an older program had stored of a ticket counts before what
/// the rules of this moment make of the job's file: lengths of pieces, bits, heights and depths of bores. What a change took out is looked for
/// in earlier forms of the job: drafts and quotes.
/// </summary>
internal static class PartsOfStoredJobs
{
    [AfterMigration("0012_parts.sql")]
    public static void Fill(ShopSession session)
    {
        var tables = ShopTablesShelf.Current(session, ShopTables.Standard);
        foreach (var job in session.All<JobRow>("SELECT id, number, job_file FROM jobs ORDER BY id"))
            new Filling(session, job, tables).Fill();
        foreach (var (id, file) in session.All<(long, string)>("SELECT id, job_file FROM quotes ORDER BY id"))
        {
            if (JobFileReader.Find(file) is { } job)
                StoredParts.PutQuote(session, id, JobTakeoff.Of(job, tables, TakeoffRules.First));
        }
        foreach (var table in new[] { "piece_parts", "post_parts", "job_frames", "quote_documents" })
            session.Execute($"UPDATE {table} SET rules = {TakeoffRules.First}");
    }

    /// <summary>The filling of one job.</summary>
    private sealed class Filling
    {
        private readonly ShopSession _session;
        private readonly JobRow _job;
        private readonly ShopTables _tables;
        private readonly Lazy<IReadOnlyList<JobTakeoff>> _earlier;
        private readonly ILookup<long, BoreRow> _bores;

        public Filling(ShopSession session, JobRow job, ShopTables tables)
        {
            (_session, _job, _tables) = (session, job, tables);
            _earlier = new(() => [.. Earlier()]);
            _bores = Bores(session, job.Id).ToLookup(bore => bore.PostId);
        }

        public void Fill()
        {
            var takeoff = JobFileReader.Find(_job.JobFile) is { } job ? JobTakeoff.Of(job, _tables, TakeoffRules.First) : null;
            var pieces = FillPieces(takeoff);
            var posts = FillPosts(takeoff);
            if (takeoff is not null)
                StoredParts.Put(_session, _job.Id, JobFrame.Of(takeoff) with { Totals = JobTotals.Of(pieces, posts.Sum(post => post.Bores.Count)) });
        }

        private List<PieceWork> FillPieces(JobTakeoff? takeoff)
        {
            var works = (takeoff is null ? [] : PieceWork.Of(takeoff)).ToDictionary(work => work.Piece.Run);
            var filled = new List<PieceWork>();
            foreach (var row in _session.All<PieceRow>(
                "SELECT id, run, material, diameter_nm AS diameter, cut_nm AS cut, dropped_at FROM pieces WHERE job_id = @Id ORDER BY position", new { _job.Id }))
            {
                var work = works.GetValueOrDefault(row.Run);
                if (row.DroppedAt is null && work is not null)
                    filled.Add(work = work with { Piece = work.Piece with { Cut = row.Cut } });
                else if (row.DroppedAt is not null)
                    work = row.IsOf(work) ? work : _earlier.Value.SelectMany(PieceWork.Of).FirstOrDefault(row.IsOf);
                if (work is not null)
                    StoredParts.Put(_session, row.Id, work);
            }
            return filled;
        }

        private List<PostWork> FillPosts(JobTakeoff? takeoff)
        {
            var works = (takeoff is null ? [] : PostWork.Of(takeoff)).ToDictionary(work => work.Post.Mark);
            var filled = new List<PostWork>();
            foreach (var row in _session.All<PostRow>("SELECT id, mark, dropped_at FROM posts WHERE job_id = @Id ORDER BY position", new { _job.Id }))
            {
                var bores = _bores[row.Id].ToList();
                var work = row.DroppedAt is null
                    ? works.GetValueOrDefault(row.Mark) is { } wanted ? AsTicketed(wanted, bores) : null
                    : _earlier.Value.SelectMany(PostWork.Of).FirstOrDefault(earlier => earlier.Post.Mark == row.Ticketed && IsOf(earlier, bores));
                if (work is null)
                {
                    StoredParts.PutOldBores(_session, row.Id, row.Ticketed, [.. bores.Select(bore => bore.ToOldBore())]);
                    continue;
                }
                StoredParts.Put(_session, row.Id, work);
                if (row.DroppedAt is null)
                    filled.Add(work);
            }
            return filled;
        }

        /// <summary>The job as drafts and quotes had it, the newest first.</summary>
        private IEnumerable<JobTakeoff> Earlier() =>
        [
            .. _session.All<string>(
                """
                SELECT draft_versions.form FROM draft_versions JOIN drafts ON drafts.id = draft_id
                WHERE job_number = @Number ORDER BY draft_id DESC, draft_versions.version DESC
                """,
                new { _job.Number }).Select(form => DraftReading.JobOf(DraftFields.FromJson(form))).OfType<Job>().Select(job => JobTakeoff.Of(job, _tables, TakeoffRules.First)),
            .. _session.All<string>("SELECT job_file FROM quotes WHERE job_number = @Number ORDER BY id DESC", new { _job.Number })
                .Select(JobFileReader.Find).OfType<Job>().Select(job => JobTakeoff.Of(job, _tables, TakeoffRules.First)),
        ];

        /// <summary>The work with the bits, heights and depths that were ticketed.</summary>
        private static PostWork AsTicketed(PostWork work, List<BoreRow> rows) => work with
        {
            Bores = [.. work.Bores.Select(bore => rows.Find(row => row.Run == bore.Run) is { } row ? AsTicketed(bore, row) : bore)],
        };

        private static Bore AsTicketed(Bore bore, BoreRow row) => bore with
        {
            Bit = row.Bit,
            Height = row.Height,
            Operations =
            [
                .. bore.Operations.Select((operation, i) => operation with
                {
                    Depth = row.Depths.ElementAtOrDefault(i) is { } depth ? depth.DepthNm : operation.Depth,
                    Mark = operation.Mark + (row.Height - bore.Height),
                    Collar = row.Depths.ElementAtOrDefault(i) is { } ticketed && ticketed.DepthNm != operation.Depth ? StopCollar.For(ticketed.DepthNm) : operation.Collar,
                }),
            ],
        };

        private static bool IsOf(PostWork work, List<BoreRow> rows) => work.Bores.Count == rows.Count && work.Bores.All(bore => rows.Exists(row =>
            row.Run == bore.Run && row.Bit == bore.Bit && row.Height == bore.Height
            && row.Depths.SequenceEqual(bore.Operations.Select(operation => new OldDrilling(operation.Face.ToString(), operation.Depth)))));
    }

    private static List<BoreRow> Bores(ShopSession session, long jobId)
    {
        var depths = session.All<(long BoreId, string Face, Length Depth)>(
            """
            SELECT bore_id, face, depth_nm FROM bore_operations JOIN bores ON bores.id = bore_id JOIN posts ON posts.id = post_id
            WHERE job_id = @jobId ORDER BY bore_id, bore_operations.position
            """,
            new { jobId }).ToLookup(drilling => drilling.BoreId, drilling => new OldDrilling(drilling.Face, drilling.Depth));
        return
        [
            .. session.All<(long Id, long PostId, string Run, string Kind, Length Bit, Length Height)>(
                """
                SELECT bores.id, post_id, run, kind, bit_nm, height_nm FROM bores JOIN posts ON posts.id = post_id JOIN pieces ON pieces.id = piece_id
                WHERE posts.job_id = @jobId ORDER BY bores.id
                """,
                new { jobId }).Select(bore => new BoreRow(bore.PostId, bore.Run, bore.Kind, bore.Bit, bore.Height, [.. depths[bore.Id]])),
        ];
    }

    private sealed record JobRow(long Id, string Number, string JobFile);

    private sealed record PieceRow(long Id, string Run, string Material, Length Diameter, Length Cut, DateTimeOffset? DroppedAt)
    {
        public bool IsOf(PieceWork? work) =>
            work is { Piece: var piece } && (piece.Run, piece.Rope.MaterialName, piece.Rope.Diameter, piece.Cut) == (Run, Material, Diameter, Cut);
    }

    private sealed record PostRow(long Id, string Mark, DateTimeOffset? DroppedAt)
    {
        /// <summary>The mark as on its ticket: a post that was taken out had its mark lengthened.</summary>
        public string Ticketed
        {
            get
            {
                var lengthened = string.Create(CultureInfo.InvariantCulture, $" (out, {Id})");
                return DroppedAt is not null && Mark.EndsWith(lengthened, StringComparison.Ordinal) ? Mark[..^lengthened.Length] : Mark;
            }
        }
    }

    private sealed record BoreRow(long PostId, string Run, string Kind, Length Bit, Length Height, IReadOnlyList<OldDrilling> Depths)
    {
        public OldBore ToOldBore() => new(Run, Kind, Bit, Height, Depths);
    }
}
