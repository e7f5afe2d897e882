using System.Buffers;
using System.Text;
using System.Text.Json;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.Intake;

/// <summary>The values of a JSON text, found in one pass over its bytes; a text is decoded only when it is asked for.</summary>
internal sealed class JsonValues : IDisposable
{
    private const int BytesAToken = 8;

    private readonly ReadOnlyMemory<byte> _utf8;
    private Token[] _tokens;
    private int _count;

    private JsonValues(ReadOnlyMemory<byte> utf8) => (_utf8, _tokens) = (utf8, ArrayPool<Token>.Shared.Rent((utf8.Length / BytesAToken) + 1));

    /// <summary>The root value; nothing may be asked of it or of any other value once this is disposed of.</summary>
    public JobValue Root => new(this);

    /// <summary>Finds the values.</summary>
    /// <exception cref="JsonException">The text is not JSON, or nested too deep.</exception>
    public static JsonValues Read(ReadOnlyMemory<byte> utf8, int deepest)
    {
        var values = new JsonValues(utf8);
        values.Read(new Utf8JsonReader(utf8.Span, new JsonReaderOptions { MaxDepth = deepest }), stackalloc int[deepest]);
        return values;
    }

    public void Dispose() => ArrayPool<Token>.Shared.Return(_tokens);

    private void Read(Utf8JsonReader json, Span<int> open)
    {
        var depth = 0;
        while (json.Read())
        {
            if (json.TokenType is JsonTokenType.EndObject or JsonTokenType.EndArray)
            {
                _tokens[open[--depth]].Next = _count;
                continue;
            }
            if (depth > 0)
                _tokens[open[depth - 1]].Length++;
            if (_count == _tokens.Length)
                MakeRoom();
            _tokens[_count] = new Token
            {
                Type = json.TokenType,
                IsEscaped = json.ValueIsEscaped,
                Start = (int)json.TokenStartIndex,
                Length = json.TokenType switch
                {
                    JsonTokenType.String or JsonTokenType.PropertyName => json.ValueSpan.Length + 2,
                    JsonTokenType.StartObject or JsonTokenType.StartArray => 0,
                    _ => json.ValueSpan.Length,
                },
                Next = _count + 1,
            };
            if (json.TokenType is JsonTokenType.StartObject or JsonTokenType.StartArray)
                open[depth++] = _count;
            _count++;
        }
    }

    public JobValueKind KindAt(int at) => _tokens[at].Type switch
    {
        JsonTokenType.String => JobValueKind.Text,
        JsonTokenType.True => JobValueKind.Yes,
        JsonTokenType.False => JobValueKind.No,
        JsonTokenType.StartObject => JobValueKind.Fields,
        JsonTokenType.StartArray => JobValueKind.List,
        _ => JobValueKind.Other,
    };

    public string ShownAt(int at) => KindAt(at) switch
    {
        JobValueKind.Fields => "{…}",
        JobValueKind.List => "[…]",
        _ => OneLine.Of(Encoding.UTF8.GetString(Raw(_tokens[at]))),
    };

    /// <summary>How many names and values or elements are directly in an object or a list.</summary>
    public int CountAt(int at) => _tokens[at].Length;

    /// <summary>The first token after a value and all that is in it.</summary>
    public int EndOf(int at) => _tokens[at].Next;

    /// <summary>A text or a name; null where it is none, or where an escape in it is half a surrogate pair, which JSON allows and text does not.</summary>
    public string? TextAt(int at)
    {
        var token = _tokens[at];
        if (token.Type is not (JsonTokenType.String or JsonTokenType.PropertyName))
            return null;
        if (!token.IsEscaped)
            return Encoding.UTF8.GetString(Raw(token)[1..^1]);
        var json = new Utf8JsonReader(Raw(token));
        json.Read();
        try
        {
            return json.GetString();
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }

    /// <summary>A text in the room given, or nothing where it has escapes or may not fit.</summary>
    public ReadOnlySpan<char> TextAt(int at, Span<char> room)
    {
        ref readonly var token = ref _tokens[at];
        return token is { Type: JsonTokenType.String, IsEscaped: false } && token.Length - 2 <= room.Length
            ? room[..Encoding.UTF8.GetChars(Raw(token)[1..^1], room)]
            : [];
    }

    /// <summary>Where a name is among known ones, or -1.</summary>
    public int IndexAt(int at, string[] known)
    {
        if (_tokens[at].IsEscaped)
            return Array.IndexOf(known, TextAt(at));
        var name = Raw(_tokens[at])[1..^1];
        for (var i = 0; i < known.Length; i++)
        {
            if (Ascii.Equals(name, known[i]))
                return i;
        }
        return -1;
    }

    private void MakeRoom()
    {
        var more = ArrayPool<Token>.Shared.Rent(_count * 2);
        _tokens.CopyTo(more, 0);
        ArrayPool<Token>.Shared.Return(_tokens);
        _tokens = more;
    }

    private ReadOnlySpan<byte> Raw(in Token token) => _utf8.Span.Slice(token.Start, token.Length);

    /// <summary>A name or a value; an object's names and values follow it in turns, a list's elements one after the other.</summary>
    private struct Token
    {
        public JsonTokenType Type;
        public bool IsEscaped;
        public int Start;

        /// <summary>Bytes with their quotation marks; of an object or a list, the names and values or elements that stand directly in it.</summary>
        public int Length;

        /// <summary>The first token after all that is in it.</summary>
        public int Next;
    }
}
