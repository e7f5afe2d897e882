using System.Globalization;
using System.Text;

namespace CutShop.Testing.Jobs;

/// <summary>The smallest jobs that tests take in.</summary>
internal static class SmallJobs
{
    /// <summary>A draft of four 5 1/2 in posts 6 ft apart, two rows of 1 1/2 in polypropylene with 6 in of sag.</summary>
    public static DraftForm FourPosts(string number = "LQ-3001", string customer = "Lantern Quay boardwalk", string due = "2027-03-12") =>
        Posts(4, number, customer, due);

    /// <summary>As <see cref="FourPosts"/>, with more or fewer posts.</summary>
    public static DraftForm Posts(int posts, string number, string customer = "Lantern Quay boardwalk", string due = "") => new DraftQuestions
    {
        Number = number,
        Customer = customer,
        Due = due,
        Posts = posts.ToString(CultureInfo.InvariantCulture),
        Across = "5 1/2",
        PostHeight = "42",
        Width = "6'",
        Rows = "36, 18",
        Diameter = "1 1/2",
        Sag = "6",
    }.ToForm().OrThrow();

    /// <summary>
    /// A job of an arc of nine 5 1/2 in posts at 72 in on a radius of 240 in, climbing 6 in a section, with two rows. The installer bores all but the
    /// last post unless <paramref name="boring"/> says otherwise; A2 has a hole for the top row.
    /// </summary>
    /// <param name="number">The job's number.</param>
    /// <param name="boring">Who bores: "site" or "shop".</param>
    /// <param name="low">Height of the low row.</param>
    public static Job StandingArc(string number, string boring = "site", string low = "18 in") => JobFileReader.Read(Encoding.UTF8.GetBytes($$"""
        { "number": "{{number}}", "boring": "{{boring}}", "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
          "lines": [ { "mark": "A",
            "posts": [ {{string.Join(", ", Enumerable.Range(1, 9).Select(Post))}} ],
            "curve": { "radius": "240 in", "chord": "72 in", "turns": "left", "rise": "6 in" },
            "rows": [ { "mark": "top", "height": "36 in", "sag": "4 in", "start": "stopped", "finish": "stopped" },
                      { "mark": "low", "height": "{{low}}", "sag": "4 in", "start": "stopped", "finish": "stopped" } ] } ] }
        """)).Job!;

    private static string Post(int number) => $$"""
        { "mark": "A{{number}}", "shape": "square", "across": "5 1/2 in", "height": "42 in"
          {{(number == 2 ? """, "holes": { "top": { "across": "1 5/8 in", "height": "35 1/2 in" } }""" : number == 9 ? """, "boring": "shop" """ : "")}} }
        """;

    /// <summary>A job of one line with two posts and one row: one piece of a known length, two posts with a bore each.</summary>
    /// <param name="number">The job's number.</param>
    /// <param name="clear">Clear width: with 5 1/2 in posts and a straight rope, the piece is 5 1/2 in longer.</param>
    /// <param name="more">Further fields of the job, as JSON with a comma behind each.</param>
    /// <param name="material">The rope.</param>
    /// <param name="ofRope">Further fields of the rope, as JSON with a comma behind each.</param>
    /// <param name="allowances">What is added, as JSON.</param>
    public static Job OnePiece(
        string number,
        string clear = "72 in",
        string more = "",
        string material = "polypropylene",
        string ofRope = "",
        string allowances = """{ "shrink": "0%" }""") =>
        JobFileReader.Read(Encoding.UTF8.GetBytes($$"""
        { "number": "{{number}}", {{more}} "rope": { {{ofRope}} "material": "{{material}}", "diameter": "1 1/2 in" },
          "allowances": {{allowances}},
          "lines": [ { "mark": "A",
            "posts": [ { "mark": "A1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
                       { "mark": "A2", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
            "sections": [ { "clear": "{{clear}}" } ],
            "rows": [ { "mark": "top", "height": "36 in", "sag": "0 in", "start": "stopped", "finish": "stopped" } ] } ] }
        """)).Job!;
}
