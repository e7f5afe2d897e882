using CutShop.Takeoff.Words;
using CutShop.Web.Shared;

namespace CutShop.Web.Settings;

/// <summary>What the pages of settings say.</summary>
internal static class SettingsWords
{
    public static WordList List { get; } = new(typeof(SettingsWords));

    internal static PageText T { get; } = new(List);
}
