using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.JobFile;

/// <summary>A place in a JSON document; its path is put together only when somebody asks for it.</summary>
internal sealed partial class JsonPlace
{
    private readonly JsonPlace? _parent;
    private readonly string? _name;
    private readonly int _index;

    private JsonPlace(JsonPlace? parent, string? name, int index) => (_parent, _name, _index) = (parent, name, index);

    public static JsonPlace Root { get; } = new(parent: null, name: null, index: 0);

    public JsonPlace this[string name] => new(this, name, index: 0);

    public JsonPlace this[int index] => new(this, name: null, index);

    /// <summary>The path: dots before plain names, else brackets and quotes (RFC 9535).</summary>
    public override string ToString()
    {
        if (_parent is null)
            return "$";
        var before = _parent.ToString();
        if (_name is null)
            return string.Create(CultureInfo.InvariantCulture, $"{before}[{_index}]");
        return PlainName().IsMatch(_name) ? $"{before}.{_name}" : $"{before}['{Quoted(_name)}']";
    }

    /// <summary>A value as it stands in the file, on one line and cut short.</summary>
    public static string Shown(JsonElement element)
    {
        if (element.ValueKind == JsonValueKind.Object)
            return "{…}";
        if (element.ValueKind == JsonValueKind.Array)
            return "[…]";
        return OneLine.Of(element.GetRawText());
    }

    private static string Quoted(string name) =>
        OneLine.Of(name.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("'", "\\'", StringComparison.Ordinal));

    [GeneratedRegex(@"^[A-Za-z_][A-Za-z0-9_]{0,60}\z", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex PlainName();
}
