using CutShop.Shop.Maintenance;

namespace CutShop.Cli;

/// <summary>What a command says where the machine is at fault: no room, no right to write, no such file.</summary>
internal static class Trouble
{
    /// <summary>The trouble in words, or null where an exception is a bug of the program.</summary>
    public static string? TextOf(Exception exception) => StorageError.Of(exception)?.Text
        ?? (exception is IOException or UnauthorizedAccessException or InvalidDataException ? exception.Message : null);
}
