using System.Text.Encodings.Web;
using System.Text.Json;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Intake;

/// <summary>What a value of a job is, whatever it was read from.</summary>
public enum JobValueKind
{
    /// <summary>A text.</summary>
    Text,

    /// <summary>True.</summary>
    Yes,

    /// <summary>False.</summary>
    No,

    /// <summary>Fields by name.</summary>
    Fields,

    /// <summary>A list.</summary>
    List,

    /// <summary>Something that no field of a job takes, such as a number.</summary>
    Other,
}

/// <summary>
/// A value of a job as its source has it: a job file, a form or a sheet. <see cref="JobReader"/> judges it, so that all sources are
/// read by the same rules. <c>default</c> is a value that no field takes.
/// </summary>
public readonly record struct JobValue
{
    /// <summary>The JSON text that it is in, or what it was made of.</summary>
    private readonly object? _source;

    /// <summary>Where in a JSON text.</summary>
    private readonly int _at;

    internal JobValue(object source, int at = 0) => (_source, _at) = (source, at);

    /// <summary>What it is.</summary>
    public JobValueKind Kind => _source switch
    {
        JsonValues json => json.KindAt(_at),
        string => JobValueKind.Text,
        bool yes => yes ? JobValueKind.Yes : JobValueKind.No,
        KeyValuePair<string, JobValue>[] => JobValueKind.Fields,
        JobValue[] => JobValueKind.List,
        _ => JobValueKind.Other,
    };

    /// <summary>The text; null where it is not whole characters, or no text.</summary>
    public string? Text => _source is JsonValues json ? json.TextAt(_at) : _source as string;

    /// <summary>The value as a message shows it: on one line and cut short.</summary>
    public string Shown => _source switch
    {
        JsonValues json => json.ShownAt(_at),
        string text => OneLine.Of($"\"{JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\""),
        bool yes => yes ? "true" : "false",
        KeyValuePair<string, JobValue>[] => "{…}",
        JobValue[] => "[…]",
        _ => "",
    };

    /// <summary>How many elements a list has.</summary>
    public int Count => _source is JsonValues json ? json.CountAt(_at) : (_source as JobValue[])?.Length ?? 0;

    /// <summary>The fields in the order of the source, unknown and doubled names among them.</summary>
    internal Walk Fields => new(this, isList: false);

    /// <summary>The elements of a list.</summary>
    internal Walk Elements => new(this, isList: true);

    /// <summary>A text.</summary>
    public static JobValue OfText(string text) => new(text);

    /// <summary>True.</summary>
    public static JobValue Yes { get; } = new(true);

    /// <summary>False.</summary>
    public static JobValue No { get; } = new(false);

    /// <summary>Fields by name; those without a value are left out.</summary>
    public static JobValue OfFields(IEnumerable<KeyValuePair<string, JobValue?>> fields) =>
        new(fields.Where(one => one.Value is not null).Select(one => KeyValuePair.Create(one.Key, one.Value!.Value)).ToArray());

    /// <summary>A list.</summary>
    public static JobValue OfList<T>(IEnumerable<T> all, Func<T, JobValue> value) => new(all.Select(value).ToArray());

    /// <summary>The value.</summary>
    public override string ToString() => Shown;

    /// <summary>The text without making a string of it, where it is plain and fits the room.</summary>
    internal ReadOnlySpan<char> TextIn(Span<char> room) => _source is JsonValues json && json.TextAt(_at, room) is { Length: > 0 } text ? text : Text;

    /// <summary>Goes over fields or elements one after the other.</summary>
    internal struct Walk(JobValue whole, bool isList)
    {
        private int _at = -1;

        public readonly Walk GetEnumerator() => this;

        public readonly Walk Current => this;

        /// <summary>The field's name; one with half a character has a mark in its place.</summary>
        public readonly string Name => whole._source is JsonValues json ? json.TextAt(_at) ?? "\uFFFD" : ((KeyValuePair<string, JobValue>[])whole._source!)[_at].Key;

        public readonly JobValue Value => whole._source switch
        {
            JsonValues json => new(json, ValueAt),
            JobValue[] list => list[_at],
            _ => ((KeyValuePair<string, JobValue>[])whole._source!)[_at].Value,
        };

        private readonly int ValueAt => isList ? _at : _at + 1;

        public bool MoveNext()
        {
            if (whole._source is JsonValues json)
            {
                _at = _at < 0 ? whole._at + 1 : json.EndOf(ValueAt);
                return _at < json.EndOf(whole._at);
            }
            return whole._source is Array all && ++_at < all.Length;
        }

        /// <summary>Where the field's name is among known ones, or -1.</summary>
        public readonly int IndexIn(string[] known) => whole._source is JsonValues json ? json.IndexAt(_at, known) : Array.IndexOf(known, Name);
    }
}
