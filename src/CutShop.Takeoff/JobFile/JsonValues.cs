using System.Buffers;
using System.Text;
using System.Text.Json;
using CutShop.Takeoff.Lengths;

namespace CutShop.Takeoff.JobFile;

/// <summary>The values of a JSON text, found in one pass over its bytes; a text is decoded only when it is asked for.</summary>
internal sealed class JsonValues : IDisposable
{
    private const int BytesAToken = 8;

    /// <summary>Most texts of a job are names and sizes that come again and again: so many are made once.</summary>
    private const int TextsKept = 256;

    private const int LongestKept = 24;

    private readonly ReadOnlyMemory<byte> _utf8;
    private readonly string?[] _texts = new string?[TextsKept];
    private Token[] _tokens;
    private int _count;

    private JsonValues(ReadOnlyMemory<byte> utf8) => (_utf8, _tokens) = (utf8, ArrayPool<Token>.Shared.Rent((utf8.Length / BytesAToken) + 1));

    /// <summary>The root value; nothing may be asked of it or of any other value once this is disposed of.</summary>
    public JobValue Root => new Value(this, 0);

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

    /// <summary>The text of a token, or null where an escape in it is half a surrogate pair, which JSON allows and text does not.</summary>
    private string? TextAt(int at)
    {
        var token = _tokens[at];
        var raw = Raw(token);
        if (!token.IsEscaped)
            return Kept(raw[1..^1]);
        var json = new Utf8JsonReader(raw);
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

    private string Kept(ReadOnlySpan<byte> text)
    {
        if (text.Length is 0 or > LongestKept)
            return Encoding.UTF8.GetString(text);
        ref var kept = ref _texts[((text.Length * 31) + (text[0] * 7) + text[^1] + text[text.Length / 2]) % TextsKept];
        return kept is not null && Ascii.Equals(text, kept) ? kept : kept = Encoding.UTF8.GetString(text);
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

    private sealed class Value(JsonValues json, int at) : JobValue
    {
        private Token Token => json._tokens[at];

        public override JobValueKind Kind => Token.Type switch
        {
            JsonTokenType.String => JobValueKind.Text,
            JsonTokenType.True => JobValueKind.Yes,
            JsonTokenType.False => JobValueKind.No,
            JsonTokenType.StartObject => JobValueKind.Fields,
            JsonTokenType.StartArray => JobValueKind.List,
            _ => JobValueKind.Other,
        };

        public override string? Text => Kind == JobValueKind.Text ? json.TextAt(at) : null;

        public override string Shown => Kind switch
        {
            JobValueKind.Fields => "{…}",
            JobValueKind.List => "[…]",
            _ => OneLine.Of(Encoding.UTF8.GetString(json.Raw(Token))),
        };

        public override int Count => Token.Length;

        public override IEnumerable<KeyValuePair<string, JobValue>> Fields
        {
            get
            {
                for (var name = at + 1; name < Token.Next; name = json._tokens[name + 1].Next)
                    yield return new(json.TextAt(name) ?? "\uFFFD", new Value(json, name + 1));
            }
        }

        public override IEnumerable<JobValue> Elements
        {
            get
            {
                for (var element = at + 1; element < Token.Next; element = json._tokens[element].Next)
                    yield return new Value(json, element);
            }
        }
    }
}
