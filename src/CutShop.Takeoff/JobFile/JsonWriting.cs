using System.Text.Json;

namespace CutShop.Takeoff.JobFile;

/// <summary>What both JSON writers do alike.</summary>
internal static class JsonWriting
{
    /// <summary>Writes an array of objects.</summary>
    public static void WriteAll<T>(this Utf8JsonWriter json, string name, IReadOnlyList<T> all, Action<Utf8JsonWriter, T> write)
    {
        json.WriteStartArray(name);
        foreach (var one in all)
        {
            json.WriteStartObject();
            write(json, one);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }
}
