using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using CutShop.Benchmarks.Takeoff;
using Microsoft.Data.Sqlite;

namespace CutShop.Benchmarks.Against;

/// <summary>What a job's worked-out parts take where they are stored, against the old version's takeoff as JSON without blanks.</summary>
internal sealed class StoredSizeMeasure(ShopProgram program) : Measure
{
    private const int Posts = 2_000;

    private const long Tables = 3;

    private static readonly JsonSerializerOptions WithoutBlanks = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public override void Prepare()
    {
        // Each turn makes what it measures.
    }

    public override IEnumerable<Reading[]> Turn()
    {
        var job = GeneratedJob.OfPosts(Posts);
        return [[new(string.Create(CultureInfo.InvariantCulture, $"parts of {Posts:N0} posts against the takeoff as JSON, kB"), (program.IsOld ? TakeoffBytes(job) : StoredBytes(job)) / 1e3, "no parts stored")]];
    }

    public override void Dispose()
    {
        // Nothing is kept between turns.
    }

    private long TakeoffBytes(byte[] job)
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(file, job);
            return Encoding.UTF8.GetByteCount(JsonNode.Parse(program.Run("takeoff", file))!.ToJsonString(WithoutBlanks));
        }
        finally
        {
            File.Delete(file);
        }
    }

    /// <summary>Bytes of all parts of the shop's one job, or null where this version stores none.</summary>
    private long? StoredBytes(byte[] job)
    {
        using var shop = new ProgramShop(program);
        shop.Start();
        shop.TakeInByApi(job);
        shop.Stop();
        using var database = new SqliteConnection($"Data Source={ShopFolder.DatabaseIn(shop.Folder)};Mode=ReadOnly;Pooling=False");
        database.Open();
        using var command = database.CreateCommand();
        command.CommandText = "SELECT count(*) FROM sqlite_schema WHERE type = 'table' AND name IN ('piece_parts', 'post_parts', 'job_frames')";
        if ((long)command.ExecuteScalar()! < Tables)
            return null;
        command.CommandText = "SELECT sum(length(CAST(part AS BLOB))) FROM (SELECT part FROM piece_parts UNION ALL SELECT part FROM post_parts UNION ALL SELECT part FROM job_frames)";
        return command.ExecuteScalar() as long?;
    }
}
