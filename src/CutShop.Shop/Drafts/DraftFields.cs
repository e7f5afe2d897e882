using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace CutShop.Shop;

/// <summary>A draft as a flat list of fields and back: <c>lines[0].posts[1].across</c> and the text typed there.</summary>
public static class DraftFields
{
    private const int LargestIndex = 2 * DraftForm.MostPosts;
    private const int LongestText = 500;
    private const int DeepestName = 4; // lines[0].rows[0].rope.diameter

    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);

    /// <summary>The draft as JSON text, as it is stored.</summary>
    public static string ToJson(DraftForm form) => JsonSerializer.Serialize(form, Json);

    /// <summary>The draft from its stored text.</summary>
    public static DraftForm FromJson(string json) => JsonSerializer.Deserialize<DraftForm>(json, Json)!;

    /// <summary>Every field with its text, in the order of the form.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>> Of(DraftForm form)
    {
        var fields = new List<KeyValuePair<string, string>>();
        Walk(JsonSerializer.SerializeToNode(form, Json)!, "", fields);
        return fields;
    }

    /// <summary>The draft that a form's fields make. Names that are no field of a draft are passed over; gaps in a list close up.</summary>
    public static DraftForm Read(IEnumerable<KeyValuePair<string, string>> fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var root = new Branch();
        foreach (var (name, text) in fields)
        {
            if (name.Split('.') is { Length: <= DeepestName } names)
                root.Put(names, text.Length <= LongestText ? text : text[..LongestText]);
        }
        try
        {
            return root.ToNode().Deserialize<DraftForm>(Json)!;
        }
        catch (JsonException)
        {
            // A text where a list belongs: no form of ours sends that.
            return new DraftForm();
        }
    }

    private static void Walk(JsonNode node, string path, List<KeyValuePair<string, string>> fields)
    {
        switch (node)
        {
            case JsonObject branch:
                foreach (var (name, value) in branch)
                    Walk(value!, path.Length == 0 ? name : $"{path}.{name}", fields);
                break;
            case JsonArray list:
                for (var i = 0; i < list.Count; i++)
                    Walk(list[i]!, string.Create(CultureInfo.InvariantCulture, $"{path}[{i}]"), fields);
                break;
            default:
                fields.Add(new(path, node.GetValue<string>()));
                break;
        }
    }

    /// <summary>Names on their way to becoming an object or a list.</summary>
    private sealed class Branch
    {
        private readonly Dictionary<string, object> _named = [];
        private SortedDictionary<int, Branch>? _numbered;

        public void Put(ReadOnlySpan<string> names, string text)
        {
            var (name, index) = Split(names[0]);
            if (name.Length == 0 || index > LargestIndex)
                return;
            if (index is null && names.Length == 1)
            {
                _named[name] = text;
                return;
            }
            if (names.Length == 1)
                return;
            if (!_named.TryGetValue(name, out var next) || next is not Branch branch)
                _named[name] = branch = new Branch();
            if (index is { } at)
            {
                branch._numbered ??= [];
                if (!branch._numbered.TryGetValue(at, out var element))
                    branch._numbered[at] = element = new Branch();
                branch = element;
            }
            branch.Put(names[1..], text);
        }

        public JsonNode ToNode() => _numbered is not null
            ? new JsonArray([.. _numbered.Values.Select(element => element.ToNode())])
            : new JsonObject(_named.Select(pair => KeyValuePair.Create<string, JsonNode?>(
                pair.Key, pair.Value is Branch branch ? branch.ToNode() : JsonValue.Create((string)pair.Value))));

        private static (string Name, int? Index) Split(string name)
        {
            var open = name.IndexOf('[', StringComparison.Ordinal);
            if (open < 0)
                return (name, null);
            return name.EndsWith(']') && int.TryParse(name.AsSpan()[(open + 1)..^1], NumberStyles.None, CultureInfo.InvariantCulture, out var index)
                ? (name[..open], index)
                : ("", null);
        }
    }
}
