using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.JobFile;

/// <summary>
/// Reads the fields of one part of a job after another: of the job itself, a line, a post. Going to a part reports a value that has no
/// fields, unknown and doubled names; each read reports a missing or wrong value once and gives null.
/// </summary>
internal sealed class FieldReader(List<JobProblem> problems, string[] known)
{
    /// <summary>After so many problems the rest of a job is not read: it is no job, and nobody would read them.</summary>
    public const int MostProblems = 100_000;

    /// <summary>After so many problems a hint at what was meant helps nobody.</summary>
    private const int MostHints = 100;

    private static readonly Sentence YesOrNoWords = JobFileWords.Say("YesOrNo");

    private readonly JobValue?[] _values = new JobValue?[known.Length];

    /// <summary>The part that is read.</summary>
    public Part Part { get; private set; }

    /// <summary>False where the value has no fields at all, so that nothing more is said of them.</summary>
    public bool HasFields => Part.HasFields;

    /// <summary>True where there are too many problems to go on.</summary>
    public bool IsGivenUp => problems.Count >= MostProblems;

    /// <summary>A field's value, or null where it is missing.</summary>
    public JobValue? this[string name] => _values[IndexOf(name)];

    public bool Has(string name) => this[name] is not null;

    /// <summary>Goes to a part.</summary>
    public FieldReader At(Part part)
    {
        Part = part;
        Array.Clear(_values);
        if (!part.HasFields)
            ProblemAt(part.Place, part.Value, "Accepted", JobFileWords.Say("AnObject", Joined(known)));
        foreach (var (name, value) in part.HasFields ? part.Value.Fields : [])
        {
            if (IsGivenUp)
                break;
            Keep(name, value);
        }
        return this;
    }

    /// <summary>A problem of a field.</summary>
    /// <param name="name">The field.</param>
    /// <param name="key">The sentence among the <see cref="JobFileWords"/>.</param>
    /// <param name="values">What stands in its places.</param>
    public void Problem(string name, string key, params IReadOnlyList<object?> values) => ProblemAt(Part.Place[name], this[name], key, values);

    public void Problem(string name, Sentence sentence) => ProblemAt(Part.Place[name], this[name], sentence);

    public void ProblemAt(JobPlace place, JobValue? value, string key, params IReadOnlyList<object?> values) => ProblemAt(place, value, JobFileWords.Say(key, values));

    public void ProblemAt(JobPlace place, JobValue? value, Sentence sentence) => problems.Add(new(place, value?.Shown ?? "", sentence));

    /// <summary>A hint at the name that was meant, or nothing.</summary>
    public object HintFor(string typed, IEnumerable<string> known) =>
        problems.Count < MostHints && NearestName.Find(typed, known) is { } name ? JobFileWords.Say("DidYouMean", name) : "";

    /// <summary>A text field; null where it is missing or no text.</summary>
    public string? Text(string name, Sentence accepted, bool required)
    {
        var value = this[name];
        if (value is null)
        {
            if (required && HasFields)
                Problem(name, "Missing", accepted);
            return null;
        }
        if (value.Kind != JobValueKind.Text)
            Problem(name, "Accepted", accepted);
        else if (value.Text is not { } text)
            Problem(name, "HalfACharacter");
        else if (text.Contains('\0', StringComparison.Ordinal))
            Problem(name, "NulCharacter");
        else
            return text;
        return null;
    }

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
        if (Text(name, words.Accepted, required) is not { } text)
            return null;
        if (words.Values.TryGetValue(text, out var value))
            return value;
        Problem(name, "Word", words.Accepted, HintFor(text, words.Values.Keys));
        return null;
    }

    /// <summary>A length within limits, both inclusive.</summary>
    public Length? Length(string name, Length least, Length most, bool required)
    {
        if (Text(name, LengthText.Accepted, required) is not { } text || Good(name, LengthText.Parse(text, allowNegative: least.IsNegative)) is not { } length)
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
    public FieldReader FieldsOf(string name, string[] names) => new FieldReader(problems, names).At(new(this[name]!, Part.Place[name]));

    /// <summary>The parts in a list; a missing list, and one that is too short, is reported.</summary>
    public T[] All<T>(string name, string[] names, int least, Func<FieldReader, T> read)
    {
        if (this[name] is not { Kind: JobValueKind.List } list)
        {
            if (HasFields)
                Problem(name, Has(name) ? "Accepted" : "Missing", JobFileWords.Say("AList", name));
            return [];
        }
        if (list.Count < least)
            Problem(name, "TooFew", list.Count, least);
        var (place, reader) = (Part.Place[name], new FieldReader(problems, names));
        // Room for as many as can be wrong; a longer list, which may be rubbish, gets more as it proves good.
        var (all, count) = (new T[Math.Min(list.Count, MostProblems)], 0);
        foreach (var value in list.Elements)
        {
            if (IsGivenUp)
                break;
            if (count == all.Length)
                Array.Resize(ref all, count * 2);
            all[count] = read(reader.At(new(value, place[count])));
            count++;
        }
        return count == all.Length ? all : all[..count];
    }

    private T? Good<T>(string name, Parsed<T> parsed)
        where T : struct
    {
        if (parsed.IsGood)
            return parsed.Value;
        Problem(name, parsed.Reason!);
        return null;
    }

    private void Keep(string name, JobValue value)
    {
        var at = IndexOf(name);
        if (at < 0)
            ProblemAt(Part.Place[name], value, "UnknownName", Joined(known), HintFor(name, known));
        else if (_values[at] is not null)
            ProblemAt(Part.Place[name], value, "GivenTwice");
        else
            _values[at] = value;
    }

    /// <summary>Where a name is among the known ones, or -1. They are few, and mostly the very same text.</summary>
    private int IndexOf(string name)
    {
        for (var i = 0; i < known.Length; i++)
        {
            if (ReferenceEquals(known[i], name) || known[i] == name)
                return i;
        }
        return -1;
    }

    private static string Joined(string[] names) => string.Join(", ", names);
}

/// <summary>A part of a job: a value and its place.</summary>
internal readonly record struct Part(JobValue Value, JobPlace Place)
{
    public bool HasFields => Value.Kind == JobValueKind.Fields;

    /// <summary>A field's value, or null where it is missing.</summary>
    public JobValue? Find(string name) => Value.Fields.FirstOrDefault(one => one.Key == name).Value;
}

/// <summary>The words that a field may be.</summary>
/// <param name="Values">What each word means.</param>
internal sealed record WordChoice<T>(IReadOnlyDictionary<string, T> Values)
{
    /// <summary>The words, for messages.</summary>
    public Sentence Accepted { get; } = JobFileWords.Say("OneOf", string.Join(", ", Values.Keys));
}
