using System.Text.Encodings.Web;
using System.Text.Json;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.JobFile;

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
/// read by the same rules.
/// </summary>
public abstract class JobValue
{
    /// <summary>What it is.</summary>
    public abstract JobValueKind Kind { get; }

    /// <summary>The text; null where it is not whole characters, or no text.</summary>
    public virtual string? Text => null;

    /// <summary>The value as a message shows it: on one line and cut short.</summary>
    public abstract string Shown { get; }

    /// <summary>How many elements a list has.</summary>
    public virtual int Count => 0;

    /// <summary>The fields in the order of the source, unknown and doubled names among them.</summary>
    public virtual IEnumerable<KeyValuePair<string, JobValue>> Fields => [];

    /// <summary>The elements of a list.</summary>
    public virtual IEnumerable<JobValue> Elements => [];

    /// <summary>A text.</summary>
    public static JobValue OfText(string text) => new TextValue(text);

    /// <summary>True.</summary>
    public static JobValue Yes { get; } = new PlainValue(JobValueKind.Yes);

    /// <summary>False.</summary>
    public static JobValue No { get; } = new PlainValue(JobValueKind.No);

    /// <summary>Fields by name; those without a value are left out.</summary>
    public static JobValue OfFields(IEnumerable<KeyValuePair<string, JobValue?>> fields) => new FieldsValue(fields);

    /// <summary>A list.</summary>
    public static JobValue OfList<T>(IReadOnlyList<T> all, Func<T, JobValue> value)
    {
        ArgumentNullException.ThrowIfNull(all);
        return new ListValue(all.Count, all.Select(value));
    }

    private sealed class TextValue(string text) : JobValue
    {
        public override JobValueKind Kind => JobValueKind.Text;

        public override string Text => text;

        public override string Shown => OneLine.Of($"\"{JsonEncodedText.Encode(text, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"");
    }

    private sealed class PlainValue(JobValueKind kind) : JobValue
    {
        public override JobValueKind Kind => kind;

        public override string Shown => kind == JobValueKind.Yes ? "true" : "false";
    }

    private sealed class FieldsValue(IEnumerable<KeyValuePair<string, JobValue?>> fields) : JobValue
    {
        public override JobValueKind Kind => JobValueKind.Fields;

        public override string Shown => "{…}";

        public override IEnumerable<KeyValuePair<string, JobValue>> Fields =>
            fields.Where(one => one.Value is not null).Select(one => KeyValuePair.Create(one.Key, one.Value!));
    }

    private sealed class ListValue(int count, IEnumerable<JobValue> elements) : JobValue
    {
        public override JobValueKind Kind => JobValueKind.List;

        public override string Shown => "[…]";

        public override int Count => count;

        public override IEnumerable<JobValue> Elements => elements;
    }
}
