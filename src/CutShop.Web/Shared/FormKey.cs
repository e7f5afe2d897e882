using System.Diagnostics.CodeAnalysis;

namespace CutShop.Web.Shared;

/// <summary>Keys of forms: a form carries one from when it is shown, so that sent twice it counts once.</summary>
public static class FormKey
{
    private const int Longest = 64;

    /// <summary>True for a key that can be kept; a form of ours always has one.</summary>
    public static bool IsGood([NotNullWhen(true)] string? key) => key is { Length: > 0 and <= Longest };

    /// <summary>A new key.</summary>
    public static string New() => Guid.NewGuid().ToString("N");
}
