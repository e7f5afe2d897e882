using System.Text.Json;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.JobFile;

/// <summary>
/// The fields of one JSON object. Making it reports a value that is no object, unknown and doubled names;
/// each read reports a missing or wrong value once and gives null.
/// </summary>
internal sealed class JsonFields
{
    /// <summary>After so many problems the rest of a file is not read: it is no job file, and nobody would read them.</summary>
    public const int MostProblems = 100_000;

    /// <summary>After so many problems a hint at what was meant helps nobody.</summary>
    private const int MostHints = 100;

    private readonly string[] _known;
    private readonly List<JobProblem> _problems;
    private readonly JsonElement _element;
    private JsonElement[]? _values;

    public JsonFields(JsonElement element, JsonPlace place, List<JobProblem> problems, string[] known)
        : this(place, problems, known, element)
    {
        if (IsObject)
            _values = ReadValues();
        else
            problems.Add(new(place.ToString(), JsonPlace.Shown(element), $"accepted: an object with {string.Join(", ", known)}"));
    }

    private JsonFields(JsonPlace place, List<JobProblem> problems, string[] known, JsonElement element)
    {
        (Place, _problems, _known, _element) = (place, problems, known, element);
        IsObject = element.ValueKind == JsonValueKind.Object;
    }

    /// <summary>The fields of nothing.</summary>
    public static JsonFields None { get; } = new(JsonPlace.Root, [], [], default);

    /// <summary>Where the object stands.</summary>
    public JsonPlace Place { get; }

    /// <summary>False where the value was no object at all, so that nothing more is said of its fields.</summary>
    public bool IsObject { get; }

    /// <summary>True where there are too many problems to go on.</summary>
    public bool IsGivenUp => _problems.Count >= MostProblems;

    /// <summary>The fields of an object whose names are known to be right: they are looked for only when somebody asks.</summary>
    public static JsonFields OfRight(JsonElement element, JsonPlace place, List<JobProblem> problems, string[] known) =>
        new(place, problems, known, element);

    public bool Has(string name) => Find(name).ValueKind != JsonValueKind.Undefined;

    public JsonElement Find(string name) => (_values ??= ReadValues())[Array.IndexOf(_known, name)];

    public void Problem(string name, string text) => ProblemAt(Place[name], Find(name), text);

    public void ProblemAt(JsonPlace place, JsonElement element, string text) =>
        _problems.Add(new(place.ToString(), element.ValueKind == JsonValueKind.Undefined ? "" : JsonPlace.Shown(element), text));

    /// <summary>A hint at the name that was meant, or nothing.</summary>
    public string HintFor(string typed, IEnumerable<string> known) =>
        _problems.Count < MostHints ? NearestName.Hint(typed, known) : "";

    /// <summary>A text field; null where it is missing or no text.</summary>
    public string? Text(string name, string accepted, bool required)
    {
        var element = Find(name);
        if (element.ValueKind == JsonValueKind.String)
        {
            if (WholeText(element.GetString) is not { } text)
                Problem(name, "half a surrogate pair; accepted: whole characters");
            else if (text.Contains('\0', StringComparison.Ordinal))
                Problem(name, "a NUL character; accepted: characters that can be written");
            else
                return text;
            return null;
        }
        if (element.ValueKind != JsonValueKind.Undefined)
            Problem(name, $"accepted: {accepted}");
        else if (required && IsObject)
            Problem(name, $"missing; accepted: {accepted}");
        return null;
    }

    /// <summary>A true or false field that need not be there.</summary>
    public bool? YesOrNo(string name)
    {
        var kind = Find(name).ValueKind;
        if (kind is not (JsonValueKind.True or JsonValueKind.False or JsonValueKind.Undefined))
            Problem(name, "accepted: true or false");
        return kind switch
        {
            JsonValueKind.True => true,
            JsonValueKind.False => false,
            _ => null,
        };
    }

    /// <summary>A field read from text by <paramref name="parse"/>; null where it is missing or wrong.</summary>
    public T? Value<T>(string name, Func<string, Parsed<T>> parse, string accepted, bool required)
        where T : struct
    {
        if (Text(name, accepted, required) is not { } text)
            return null;
        var parsed = parse(text);
        if (parsed.IsGood)
            return parsed.Value;
        Problem(name, parsed.Problem!);
        return null;
    }

    /// <summary>A field that is one of a few words.</summary>
    public T? Word<T>(string name, IReadOnlyDictionary<string, T> words, bool required)
        where T : struct
    {
        var accepted = string.Join(", ", words.Keys);
        return Value(
            name,
            text => words.TryGetValue(text, out var value) ? Parsed.Good(value) : Parsed.Bad<T>($"accepted: {accepted}{HintFor(text, words.Keys)}"),
            accepted,
            required);
    }

    /// <summary>A length within limits, both inclusive.</summary>
    public Length? Length(string name, Length least, Length most, bool required)
    {
        return Value(name, Read, LengthText.Accepted, required);

        Parsed<Length> Read(string text)
        {
            var parsed = LengthText.Parse(text, allowNegative: least.IsNegative);
            if (!parsed.IsGood)
                return parsed;
            if (parsed.Value < least)
                return Parsed.Bad<Length>(least.IsPositive ? "accepted: above zero" : $"accepted: from {least} up");
            return parsed.Value <= most ? parsed : Parsed.Bad<Length>($"accepted: at most {LengthText.Millimetres(most)} ({LengthText.Inches(most)})");
        }
    }

    /// <summary>The fields of an object field that is there.</summary>
    public JsonFields FieldsOf(string name, string[] known) => new(Find(name), Place[name], _problems, known);

    /// <summary>The elements of an array field; null where it is missing or no array.</summary>
    public JsonElement[]? Elements(string name, string of)
    {
        var element = Find(name);
        if (element.ValueKind == JsonValueKind.Array)
            return [.. element.EnumerateArray()];
        if (IsObject)
            Problem(name, element.ValueKind == JsonValueKind.Undefined ? $"missing; accepted: an array of {of}" : $"accepted: an array of {of}");
        return null;
    }

    private JsonElement[] ReadValues()
    {
        var values = new JsonElement[_known.Length];
        if (!IsObject)
            return values;
        foreach (var property in _element.EnumerateObject())
        {
            if (IsGivenUp)
                break;
            Keep(property, values);
        }
        return values;
    }

    private void Keep(JsonProperty property, JsonElement[] values)
    {
        var name = WholeText(() => property.Name) ?? "\uFFFD";
        var at = Array.IndexOf(_known, name);
        if (at < 0)
        {
            ProblemAt(Place[name], property.Value, $"unknown name; accepted here: {string.Join(", ", _known)}{HintFor(name, _known)}");
            return;
        }
        if (values[at].ValueKind != JsonValueKind.Undefined)
            ProblemAt(Place[_known[at]], property.Value, "given twice; each name may stand once in an object");
        else
            values[at] = property.Value;
    }

    /// <summary>The text, or null where an escape in it is half a surrogate pair, which JSON allows and text does not.</summary>
    public static string? WholeText(Func<string?> read)
    {
        try
        {
            return read();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }
}
