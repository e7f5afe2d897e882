namespace CutShop.Web.Api;

/// <summary>The examples of the API's description.</summary>
internal static class ApiExamples
{
    /// <summary>A small job file.</summary>
    public const string JobFile =
        """
        {
          "number": "LQ-1042", "customer": "Lantern Quay boardwalk", "due": "2027-03-12",
          "rope": { "material": "polypropylene", "diameter": "1 1/2 in" },
          "lines": [ {
            "mark": "A",
            "posts": [
              { "mark": "A1", "shape": "square", "across": "5 1/2 in", "height": "42 in" },
              { "mark": "A2", "shape": "square", "across": "5 1/2 in", "height": "42 in" } ],
            "sections": [ { "clear": "72 in" } ],
            "rows": [ { "mark": "top", "height": "36 in", "sag": "6 in", "start": "stopped", "finish": "stopped" } ]
          } ]
        }
        """;

    /// <summary>The same job as a sheet.</summary>
    public const string JobSheet =
        """
        number,customer,due,material,diameter
        LQ-1042,Lantern Quay boardwalk,2027-03-12,polypropylene,1 1/2 in

        line,post,shape,across,height,clear
        A,A1,square,5 1/2 in,42 in,72 in
        A,A2,square,5 1/2 in,42 in,

        line,row,height,sag,start,finish
        A,top,36 in,6 in,stopped,stopped
        """;

    private const string TakenIn = """{ "number": "LQ-1042", "outcome": "taken in", "pieces": 1, "bores": 2 }""";

    private const string Before = """{ "number": "LQ-1042", "outcome": "as before", "pieces": 1, "bores": 2 }""";

    private const string WrongFile =
        """
        { "type": "about:blank", "title": "Bad Request", "status": 400, "detail": "1 thing is wrong with the job file.",
          "problems": [ { "path": "$.lines[0].posts[1].across", "value": "5.5",
            "text": "accepted: a length with its unit, such as \"72 in\"" } ] }
        """;

    private const string Jobs =
        """
        { "jobs": [ { "number": "LQ-1042", "customer": "Lantern Quay boardwalk", "due": "2027-03-12", "takenInAt": "2027-02-01T08:30:00+00:00",
            "state": "released", "pieces": 1, "cut": 0, "posts": 2, "drilled": 0 } ], "next": "3f9a0c1b2d4e-17", "more": false }
        """;

    private const string Changes =
        """
        { "changes": [ { "id": 17, "at": "2027-02-01T08:30:00+00:00", "who": "key order desk", "subject": "job", "job": "LQ-1042", "mark": "",
            "code": "job-taken-in", "what": "taken in", "before": "", "after": "1 pieces, 2 bores", "reason": "" } ], "next": "3f9a0c1b2d4e-17", "more": false }
        """;

    /// <summary>The example of an operation's answer, or null.</summary>
    public static string? Of(string? operation, string status) => (operation, status) switch
    {
        ("takeInJob" or "takeInJobSheet", "201") => TakenIn,
        ("takeInJob" or "takeInJobSheet", "200") => Before,
        ("takeInJob" or "takeInJobSheet", "400") => WrongFile,
        ("listJobs", "200") => Jobs,
        ("listChanges", "200") => Changes,
        _ => null,
    };
}
