using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace CutShop.Takeoff;

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
        return PlainName().IsMatch(_name) ? $"{before}.{_name}" : $"{before}[{Quoted(_name)}]";
    }

    /// <summary>A value as it stands in the file, on one line and cut short.</summary>
    public static string Shown(JsonElement element)
    {
        const int longest = 60;
        if (element.ValueKind == JsonValueKind.Object)
            return "{…}";
        if (element.ValueKind == JsonValueKind.Array)
            return "[…]";
        var raw = element.GetRawText();
        return raw.Length <= longest ? raw : string.Concat(raw.AsSpan(0, longest), "…");
    }

    private static string Quoted(string name)
    {
        var quoted = new StringBuilder("'");
        foreach (var c in name.Length <= 60 ? name : name[..60] + "…")
        {
            if (c is '\'' or '\\')
                quoted.Append('\\').Append(c);
            else if (char.IsControl(c))
                quoted.Append(CultureInfo.InvariantCulture, $"\\u{(int)c:x4}");
            else
                quoted.Append(c);
        }
        return quoted.Append('\'').ToString();
    }

    [GeneratedRegex(@"^[A-Za-z_][A-Za-z0-9_]{0,60}$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex PlainName();
}
