using CutShop.Shop.Maintenance;
using CutShop.Shop.Store;

namespace CutShop.Web.Shared;

/// <summary>How the server makes backups by itself.</summary>
/// <param name="Folder">Where they are kept.</param>
/// <param name="Time">The time of day.</param>
/// <param name="Keep">Which of them stay.</param>
public sealed record NightlySettings(string Folder, BackupTime Time, KeepRule Keep);
