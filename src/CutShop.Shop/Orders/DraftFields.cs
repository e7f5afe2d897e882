using System.Buffers;
using System.Collections;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization.Metadata;

namespace CutShop.Shop.Orders;

/// <summary>A draft as a flat list of fields and back: <c>lines[0].posts[1].across</c> and the text typed there.</summary>
public static class DraftFields
{
    private const int LargestIndex = 2 * DraftForm.MostPosts;
    private const int LongestText = 500;
    private const int DeepestName = 4; // lines[0].rows[0].rope.diameter

    private static readonly JsonSerializerOptions Json = Known(new(JsonSerializerDefaults.Web));

    /// <summary>The draft as JSON text, as it is stored.</summary>
    public static string ToJson(DraftForm form) => JsonSerializer.Serialize(form, Json);

    /// <summary>The draft from its stored text.</summary>
    public static DraftForm FromJson(string json) => JsonSerializer.Deserialize<DraftForm>(json, Json)!;

    /// <summary>Every field with its text, in the order of the form.</summary>
    public static IReadOnlyList<KeyValuePair<string, string>> Of(DraftForm form)
    {
        var json = new Utf8JsonReader(JsonSerializer.SerializeToUtf8Bytes(form, Json));
        json.Read();
        var fields = new List<KeyValuePair<string, string>>();
        Walk(ref json, "", fields);
        return fields;
    }

    /// <summary>The draft that a form's fields make. Names that are no field of a draft are passed over; gaps in a list close up.</summary>
    public static DraftForm Read(IEnumerable<KeyValuePair<string, string>> fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var root = new Branch();
        foreach (var (name, text) in fields)
        {
            if (name.AsSpan().Count('.') < DeepestName)
                root.Put(name, Kept(text));
        }
        var json = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(json))
            root.Write(writer);
        try
        {
            return JsonSerializer.Deserialize<DraftForm>(json.WrittenSpan, Json)!;
        }
        catch (JsonException)
        {
            // A text where a list belongs: no form of ours sends that.
            return new DraftForm();
        }
    }

    /// <summary>A draft with other text in some of its fields. Names that are no field of it are passed over.</summary>
    public static DraftForm With(DraftForm form, IEnumerable<KeyValuePair<string, string>> texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        return texts.Aggregate(form, (changed, field) => (DraftForm)With(changed, field.Key, Kept(field.Value)));
    }

    /// <summary>The text of one field; null where the name is no field of the draft.</summary>
    public static string? TextAt(DraftForm form, string field)
    {
        object? part = form;
        foreach (var range in field.AsSpan().Split('.'))
        {
            if (part is null || !TrySplit(field.AsSpan()[range], out var name, out var index) || Find(part, name) is not { } member)
                return null;
            part = member.Get!(part);
            if (index is { } at)
                part = part is IList list && at < list.Count ? list[at] : null;
        }
        return part as string;
    }

    private static string Kept(string text) => text.Length <= LongestText ? text : text[..LongestText];

    /// <summary>A copy of a part of a draft with another text at a path below it; the part itself where there is no such field.</summary>
    private static object With(object part, ReadOnlySpan<char> path, string text)
    {
        var dot = path.IndexOf('.');
        if (!TrySplit(dot < 0 ? path : path[..dot], out var name, out var index) || Find(part, name) is not { } member)
            return part;
        var old = member.Get!(part)!;
        var below = dot < 0 ? default : path[(dot + 1)..];
        var changed = (old, index) switch
        {
            (string, null) when dot < 0 => text,
            (string, _) => old,
            (IList list, { } at) when at < list.Count && dot >= 0 => WithElement(member.PropertyType, list, at, With(list[at]!, below, text)),
            (not IList, null) when dot >= 0 => With(old, below, text),
            _ => old,
        };
        return Equals(changed, old) ? part : WithMember(part, member, changed);
    }

    private static object WithMember(object part, JsonPropertyInfo member, object changed)
    {
        var type = Json.GetTypeInfo(part.GetType());
        var copy = type.CreateObject!();
        foreach (var one in type.Properties)
            one.Set!(copy, one == member ? changed : one.Get!(part));
        return copy;
    }

    private static Array WithElement(Type listType, IList list, int at, object changed)
    {
        var copy = Array.CreateInstance(listType.GetGenericArguments()[0], list.Count);
        list.CopyTo(copy, 0);
        copy.SetValue(changed, at);
        return copy;
    }

    private static JsonPropertyInfo? Find(object part, ReadOnlySpan<char> name)
    {
        foreach (var member in Json.GetTypeInfo(part.GetType()).Properties)
        {
            if (name.SequenceEqual(member.Name))
                return member;
        }
        return null;
    }

    /// <summary>Parts <c>posts[1]</c>; false where the text is neither that nor a bare name.</summary>
    private static bool TrySplit(ReadOnlySpan<char> part, out ReadOnlySpan<char> name, out int? index)
    {
        var open = part.IndexOf('[');
        name = open < 0 ? part : part[..open];
        index = null;
        if (open >= 0)
        {
            if (!part.EndsWith("]") || !int.TryParse(part[(open + 1)..^1], NumberStyles.None, CultureInfo.InvariantCulture, out var number))
                return false;
            index = number;
        }
        return name.Length > 0;
    }

    /// <summary>Goes through the value that the reader stands at, and leaves it at the value's end.</summary>
    private static void Walk(ref Utf8JsonReader json, string path, List<KeyValuePair<string, string>> fields)
    {
        switch (json.TokenType)
        {
            case JsonTokenType.StartObject:
                while (json.Read() && json.TokenType == JsonTokenType.PropertyName)
                {
                    var name = json.GetString()!;
                    json.Read();
                    Walk(ref json, path.Length == 0 ? name : $"{path}.{name}", fields);
                }
                break;
            case JsonTokenType.StartArray:
                for (var i = 0; json.Read() && json.TokenType != JsonTokenType.EndArray; i++)
                    Walk(ref json, string.Create(CultureInfo.InvariantCulture, $"{path}[{i}]"), fields);
                break;
            default:
                fields.Add(new(path, json.GetString()!));
                break;
        }
    }

    private static JsonSerializerOptions Known(JsonSerializerOptions options)
    {
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    /// <summary>Names on their way to becoming an object or a list.</summary>
    private sealed class Branch
    {
        private readonly Dictionary<string, object> _named = [];
        private readonly Dictionary<string, object>.AlternateLookup<ReadOnlySpan<char>> _byName;
        private SortedDictionary<int, Branch>? _numbered;

        public Branch() => _byName = _named.GetAlternateLookup<ReadOnlySpan<char>>();

        public void Put(ReadOnlySpan<char> path, string text)
        {
            var dot = path.IndexOf('.');
            var part = dot < 0 ? path : path[..dot];
            if (!TrySplit(part, out var name, out var index) || index > LargestIndex)
                return;
            if (dot < 0)
            {
                if (index is null)
                    _byName[name] = text;
                return;
            }
            Below(name, index).Put(path[(dot + 1)..], text);
        }

        public void Write(Utf8JsonWriter json)
        {
            if (_numbered is not null)
            {
                json.WriteStartArray();
                foreach (var element in _numbered.Values)
                    element.Write(json);
                json.WriteEndArray();
                return;
            }
            json.WriteStartObject();
            foreach (var (name, value) in _named)
            {
                json.WritePropertyName(name);
                if (value is Branch branch)
                    branch.Write(json);
                else
                    json.WriteStringValue((string)value);
            }
            json.WriteEndObject();
        }

        private Branch Below(ReadOnlySpan<char> name, int? index)
        {
            if (!_byName.TryGetValue(name, out var next) || next is not Branch branch)
                _byName[name] = branch = new Branch();
            if (index is not { } at)
                return branch;
            branch._numbered ??= [];
            if (!branch._numbered.TryGetValue(at, out var element))
                branch._numbered[at] = element = new Branch();
            return element;
        }
    }
}
