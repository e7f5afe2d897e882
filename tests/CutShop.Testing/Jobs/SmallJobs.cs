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
