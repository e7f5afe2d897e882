using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.JobFile;

/// <summary>
/// Reads the fields of one part of a job after another: of the job itself, a line, a post. Going to a part reports a value that has no
/// fields, unknown and doubled names; each read reports a missing or wrong value once and gives null.
/// </summary>
/// <param name="problems">Takes what is wrong.</param>
/// <param name="known">The names of the fields that the part may have.</param>
/// <param name="bareUnit">The unit of a length that has none, or null where it must have one.</param>
internal sealed class FieldReader(List<JobProblem> problems, string[] known, Length? bareUnit = null)
{
    /// <summary>After so many problems the rest of a job is not read: it is no job, and nobody would read them.</summary>
    public const int MostProblems = 100_000;

    /// <summary>After so many problems a hint at what was meant helps nobody.</summary>
    private const int MostHints = 100;

    private static readonly Sentence YesOrNoWords = JobFileWords.Of("YesOrNo");

    private readonly JobValue?[] _values = new JobValue?[known.Length];

    private JobPlace _place;
    private int? _index;

    /// <summary>The value of the part that is read.</summary>
    public JobValue PartValue { get; private set; }

    /// <summary>The part that is read.</summary>
    public Part Part => new(PartValue, _index is { } index ? _place[index] : _place);

    /// <summary>False where the value has no fields at all, so that nothing more is said of them.</summary>
    public bool HasFields { get; private set; }

    /// <summary>True where there are too many problems to go on.</summary>
    public bool IsGivenUp => problems.Count >= MostProblems;

    /// <summary>A field's value, or null where it is missing.</summary>
    public JobValue? this[string name] => _values[Array.IndexOf(known, name)];

    public bool Has(string name) => this[name] is not null;

    /// <summary>Goes to a part.</summary>
    /// <param name="value">The part.</param>
    /// <param name="place">Its place, or that of the list it is in.</param>
    /// <param name="index">Where it is in the list.</param>
    public FieldReader At(JobValue value, JobPlace place, int? index = null)
    {
        (PartValue, _place, _index, HasFields) = (value, place, index, value.Kind == JobValueKind.Fields);
        Array.Clear(_values);
        if (!HasFields)
            ProblemAt(Part.Place, value, "Accepted", JobFileWords.Of("AnObject", Joined(known)));
        else
            KeepFields();
        return this;
    }

    /// <summary>A problem of a field.</summary>
    /// <param name="name">The field.</param>
    /// <param name="key">The sentence among the <see cref="JobFileWords"/>.</param>
    /// <param name="values">The values for its places.</param>
    public void Problem(string name, string key, params IReadOnlyList<object?> values) => ProblemAt(Part.Place[name], this[name], key, values);

    public void Problem(string name, Sentence sentence) => ProblemAt(Part.Place[name], this[name], sentence);

    public void ProblemAt(JobPlace place, JobValue? value, string key, params IReadOnlyList<object?> values) => ProblemAt(place, value, JobFileWords.Of(key, values));

    public void ProblemAt(JobPlace place, JobValue? value, Sentence sentence) => problems.Add(new(place, value?.Shown ?? "", sentence));

    /// <summary>A hint at the name that was meant, or nothing.</summary>
    public object HintFor(string typed, IEnumerable<string> known) =>
        problems.Count < MostHints && NearestName.Find(typed, known) is { } name ? JobFileWords.Of("DidYouMean", name) : "";

    /// <summary>A text field; null where it is missing or no text.</summary>
    public string? Text(string name, Sentence accepted, bool required) =>
        TryText(name, accepted, required, stackalloc char[LengthText.LongestText], out var text) ? text.ToString() : null;

    /// <summary>A true or false field that need not be there.</summary>
    public bool? YesOrNo(string name)
    {
        var kind = this[name]?.Kind;
        if (kind is not (null or JobValueKind.Yes or JobValueKind.No))
            Problem(name, "Accepted", YesOrNoWords);
        return kind switch
        {
            JobValueKind.Yes => true,
            JobValueKind.No => false,
            _ => null,
        };
    }

    /// <summary>A field read from text by <paramref name="parse"/>; null where it is missing or wrong.</summary>
    public T? Value<T>(string name, Func<string, Parsed<T>> parse, Sentence accepted, bool required)
        where T : struct => Text(name, accepted, required) is { } text ? Good(name, parse(text)) : null;

    /// <summary>A field that is one of a few words.</summary>
    public T? Word<T>(string name, WordChoice<T> words, bool required)
        where T : struct
    {
        if (!TryText(name, words.Accepted, required, stackalloc char[LengthText.LongestText], out var text))
            return null;
        if (words.Find(text) is { } value)
            return value;
        Problem(name, "Word", words.Accepted, HintFor(text.ToString(), words.Values.Keys));
        return null;
    }

    /// <summary>A length within limits, both inclusive.</summary>
    public Length? Length(string name, Length least, Length most, bool required)
    {
        if (!TryText(name, LengthText.Accepted, required, stackalloc char[LengthText.LongestText], out var text)
            || Good(name, LengthText.Parse(text, allowNegative: least.IsNegative, bareUnit)) is not { } length)
            return null;
        if (length < least && least.IsPositive)
            Problem(name, "AboveZero");
        else if (length < least)
            Problem(name, "AtLeast", least.ToString());
        else if (length > most)
            Problem(name, "AtMost", LengthText.Millimetres(most), LengthText.Inches(most));
        else
            return length;
        return null;
    }

    /// <summary>The fields of a field that is there and has some.</summary>
    public FieldReader FieldsOf(string name, string[] names) => new FieldReader(problems, names, bareUnit).At(this[name]!.Value, Part.Place[name]);

    /// <summary>The parts in a list; a missing list, and one that is too short, is reported.</summary>
    public T[] All<T>(string name, string[] names, int least, Func<FieldReader, T> read)
    {
        if (this[name] is not { Kind: JobValueKind.List } list)
        {
            if (HasFields)
                Problem(name, Has(name) ? "Accepted" : "Missing", JobFileWords.Of("AList", name));
            return [];
        }
        if (list.Count < least)
            Problem(name, "TooFew", list.Count, least);
        var (place, reader) = (Part.Place[name], new FieldReader(problems, names, bareUnit));
        // Room for as many as can be wrong; a longer list, which may be rubbish, gets more as it proves good.
        var (all, count) = (new T[Math.Min(list.Count, MostProblems)], 0);
        foreach (var element in list.Elements)
        {
            if (IsGivenUp)
                break;
            if (count == all.Length)
                Array.Resize(ref all, count * 2);
            all[count] = read(reader.At(element.Value, place, count));
            count++;
        }
        return count == all.Length ? all : all[..count];
    }

    /// <summary>A text field, in the room given where that spares a string; false where it is missing or no text.</summary>
    private bool TryText(string name, Sentence accepted, bool required, Span<char> room, out ReadOnlySpan<char> text)
    {
        text = default;
        if (this[name] is not { } value)
        {
            if (required && HasFields)
                Problem(name, "Missing", accepted);
            return false;
        }
        text = value.TextIn(room);
        if (value.Kind != JobValueKind.Text)
            Problem(name, "Accepted", accepted);
        else if (text.IsEmpty && value.Text is null)
            Problem(name, "HalfACharacter");
        else if (text.Contains('\0'))
            Problem(name, "NulCharacter");
        else
            return true;
        return false;
    }

    private T? Good<T>(string name, Parsed<T> parsed)
        where T : struct
    {
        if (parsed.IsGood)
            return parsed.Value;
        Problem(name, parsed.Reason!);
        return null;
    }

    private void KeepFields()
    {
        foreach (var field in PartValue.Fields)
        {
            if (IsGivenUp)
                return;
            var at = field.IndexIn(known);
            if (at < 0)
                ProblemAt(Part.Place[field.Name], field.Value, "UnknownName", Joined(known), HintFor(field.Name, known));
            else if (_values[at] is not null)
                ProblemAt(Part.Place[field.Name], field.Value, "GivenTwice");
            else
                _values[at] = field.Value;
        }
    }

    private static string Joined(string[] names) => string.Join(", ", names);
}

/// <summary>A part of a job: a value and its place.</summary>
internal readonly record struct Part(JobValue Value, JobPlace Place)
{
    public bool HasFields => Value.Kind == JobValueKind.Fields;

    /// <summary>A field's value, or null where it is missing.</summary>
    public JobValue? Find(string name)
    {
        foreach (var field in Value.Fields)
        {
            if (field.Name == name)
                return field.Value;
        }
        return null;
    }
}

/// <summary>The words that a field may be.</summary>
/// <param name="Values">What each word means.</param>
internal sealed record WordChoice<T>(IReadOnlyDictionary<string, T> Values)
    where T : struct
{
    private readonly Dictionary<string, T>.AlternateLookup<ReadOnlySpan<char>> _values = new Dictionary<string, T>(Values, StringComparer.Ordinal).GetAlternateLookup<ReadOnlySpan<char>>();

    public T? Find(ReadOnlySpan<char> word) => _values.TryGetValue(word, out var value) ? value : null;

    /// <summary>The words, for messages.</summary>
    public Sentence Accepted { get; } = JobFileWords.Of("OneOf", string.Join(", ", Values.Keys));
}
