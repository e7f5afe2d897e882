using System.Globalization;
using System.Text.RegularExpressions;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.JobFile;

/// <summary>The lists that a line has.</summary>
public enum LinePart
{
    /// <summary>None: the line itself.</summary>
    None,

    /// <summary>A post.</summary>
    Post,

    /// <summary>A section.</summary>
    Section,

    /// <summary>A row of rope.</summary>
    Row,
}

/// <summary>A place in a job: the job, a line of it, or a post, section or row of a line; and perhaps a field there. <c>default</c> is the job.</summary>
/// <param name="Line">The line, from 0; null for the job.</param>
/// <param name="Part">Which of the line's lists.</param>
/// <param name="Index">The place in that list, from 0.</param>
/// <param name="Group">The object that holds the field, such as <c>rope</c>; null where the field is held directly.</param>
/// <param name="Field">The field, or a whole list or object; null for the job, line, post, section or row itself.</param>
/// <param name="Outer">The object that holds <paramref name="Group"/>, such as <c>holes</c>; null where it is held directly.</param>
public readonly partial record struct JobPlace(
    int? Line = null, LinePart Part = LinePart.None, int Index = 0, string? Group = null, string? Field = null, string? Outer = null)
{
    /// <summary>The job itself.</summary>
    public static JobPlace Job => default;

    /// <summary>A field here; in a field that is an object, a field of it.</summary>
    public JobPlace this[string name] => this with { Outer = Group, Group = Field, Field = name };

    /// <summary>An element of the list that this is.</summary>
    /// <exception cref="InvalidOperationException">A job has no such list.</exception>
    public JobPlace this[int index] => Element(index) ?? throw new InvalidOperationException($"{this} is not a list.");

    /// <summary>What holds this place; the job holds itself.</summary>
    public JobPlace Above => (Field, Part) switch
    {
        (not null, _) => this with { Outer = null, Group = Outer, Field = Group },
        (null, LinePart.None) => default,
        _ => new(Line),
    };

    /// <summary>The place as a form names its field: <c>lines[0].posts[1].across</c>; empty for the job.</summary>
    public string Name => this == default ? "" : ToString()[2..];

    /// <summary>The place of a path or of a form's field, such as <c>lines[0].posts[1].across</c>; null where it names none.</summary>
    public static JobPlace? Find(ReadOnlySpan<char> path)
    {
        JobPlace? place = default(JobPlace);
        foreach (var range in path.Split('.'))
        {
            var part = path[range];
            if (part is "$" or "" && range.Start.Value == 0)
                continue;
            var open = part.IndexOf('[');
            if (place is not { Outer: null } here)
                return null;
            place = here[(open < 0 ? part : part[..open]).ToString()];
            if (open >= 0)
                place = part[^1] == ']' && int.TryParse(part[(open + 1)..^1], NumberStyles.None, CultureInfo.InvariantCulture, out var index) ? place.Value.Element(index) : null;
        }
        return place;
    }

    /// <summary>The JSON path: dots before plain names, else brackets and quotes (RFC 9535).</summary>
    public override string ToString()
    {
        var line = Line is null ? "" : string.Create(CultureInfo.InvariantCulture, $".lines[{Line}]");
        var part = Part == LinePart.None ? "" : string.Create(CultureInfo.InvariantCulture, $".{NameOf(Part)}[{Index}]");
        return $"${line}{part}{Step(Outer)}{Step(Group)}{Step(Field)}";
    }

    private JobPlace? Element(int index) => (this, Field) switch
    {
        ({ Line: null, Group: null }, "lines") => new(index),
        ({ Line: not null, Part: LinePart.None, Group: null }, "posts") => new(Line, LinePart.Post, index),
        ({ Line: not null, Part: LinePart.None, Group: null }, "sections") => new(Line, LinePart.Section, index),
        ({ Line: not null, Part: LinePart.None, Group: null }, "rows") => new(Line, LinePart.Row, index),
        _ => null,
    };

    private static string NameOf(LinePart part) => part switch
    {
        LinePart.Post => "posts",
        LinePart.Section => "sections",
        _ => "rows",
    };

    private static string Step(string? name) => name is null ? "" : PlainName().IsMatch(name) ? $".{name}" : $"['{Quoted(name)}']";

    private static string Quoted(string name) =>
        OneLine.Of(name.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("'", "\\'", StringComparison.Ordinal));

    [GeneratedRegex(@"^[A-Za-z_][A-Za-z0-9_]{0,60}\z", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex PlainName();
}
