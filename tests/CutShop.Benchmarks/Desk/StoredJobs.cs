using System.Globalization;
using System.Text;

namespace CutShop.Benchmarks.Desk;

/// <summary>Years of jobs in a shop: one taken in as any job is, and copies of it by plain SQL with all their rows, done but for the last few.</summary>
internal static class StoredJobs
{
    /// <summary>The number of the job that was taken in.</summary>
    public const string Number = "LQ-1";

    private const int StillOpen = 300;
    private const int OfRareWord = 60; // jobs whose customer has a rare word: more than a page of them in a small shop and a large one

    /// <summary>Fills a shop.</summary>
    public static void Fill(ShopDatabase database, int jobs)
    {
        var job = JobFileReader.Read(Encoding.UTF8.GetBytes(JobFile(Number))).Job!;
        new JobIntake(database, ShopTables.Standard).TakeInAsync(job, "benchmark").GetAwaiter().GetResult();
        new JobRelease(database).ReleaseAsync(Number, "benchmark").GetAwaiter().GetResult();
        database.WriteAsync(session => Copy(session, jobs)).GetAwaiter().GetResult();
    }

    private static int Copy(ShopSession session, int jobs)
    {
        const string Numbers = "WITH RECURSIVE n (i) AS (SELECT 2 UNION ALL SELECT i + 1 FROM n WHERE i < @jobs) ";
        var values = new { jobs, open = jobs - StillOpen, each = jobs / OfRareWord, session.Now };
        session.Execute(Numbers +
            """
            INSERT INTO jobs (id, number, customer, due, one_lot, job_file, taken_in_at, released_at)
            SELECT i, 'B-' || printf('%06d', i), CASE i % @each WHEN 0 THEN 'Tide mill ' ELSE 'Lantern Quay ' END || i,
              date('2020-01-01', (i / 20) || ' days'), 0, replace(job_file, 'LQ-1', 'B-' || printf('%06d', i)), @Now, @Now
            FROM n, jobs WHERE jobs.id = 1
            """, values);
        session.Execute(Numbers +
            """
            INSERT INTO pieces (id, job_id, position, run, code, material, diameter_nm, cut_nm)
            SELECT i * 1000 + position, i, position, run, printf('%012d', i * 1000 + position), material, diameter_nm, cut_nm FROM n, pieces WHERE job_id = 1
            """, values);
        session.Execute(Numbers + "INSERT INTO posts (id, job_id, position, mark) SELECT i * 1000 + position, i, position, mark FROM n, posts WHERE job_id = 1", values);
        session.Execute(
            "INSERT INTO cut_tickets (piece_id, state) SELECT id, CASE WHEN job_id > @open THEN 'waiting' ELSE 'packed' END FROM pieces WHERE job_id > 1", values);
        session.Execute(
            "INSERT INTO drill_tickets (post_id, state) SELECT id, CASE WHEN job_id > @open THEN 'waiting' ELSE 'drilled' END FROM posts WHERE job_id > 1", values);
        return session.Execute(Numbers +
            """
            INSERT INTO history (at, actor_id, subject, subject_id, what, before, after, details, cause, reason)
            SELECT @Now, (SELECT min(id) FROM actors), 'job', i, 'job-taken-in', '', 'released', '{"pieces":6,"bores":12}', '', '' FROM n
            """, values);
    }

    private static string JobFile(string number) => string.Create(
        CultureInfo.InvariantCulture,
        $$"""
        { "number": "{{number}}", "customer": "Lantern Quay", "due": "2030-03-12", "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
          "lines": [ { "mark": "A",
            "posts": [ {{string.Join(", ", Enumerable.Range(1, 4).Select(i => $$"""{ "mark": "A{{i}}", "shape": "square", "across": "5 1/2 in", "height": "42 in" }"""))}} ],
            "sections": [ { "clear": "72 in" }, { "clear": "74 3/8 in" }, { "clear": "80 in" } ],
            "rows": [ { "mark": "top", "height": "36 in", "sag": "4 in", "start": "stopped", "finish": "stopped" },
                      { "mark": "low", "height": "18 in", "sag": "4 in", "start": "stopped", "finish": "knot" } ] } ] }
        """);
}
