using System.CommandLine;
using System.Globalization;
using CutShop.Shop.Maintenance;
using CutShop.Shop.Store;

namespace CutShop.Cli;

/// <summary>Options about backups.</summary>
internal sealed class BackupOptions
{
    private const string Never = "never";

    public Option<string?> Folder { get; } = new("--backups") { Description = CliWords.Say("HelpBackups") };

    public Option<string> Keep { get; } = new("--keep")
    {
        Description = CliWords.Say("HelpKeep"),
        DefaultValueFactory = _ => string.Join(',', KeepRule.Default.Days, KeepRule.Default.Weeks, KeepRule.Default.Months),
    };

    public Option<string> At { get; } = new("--backup-at")
    {
        Description = CliWords.Say("HelpBackupAt", Never),
        DefaultValueFactory = _ => "02:30",
    };

    public BackupOptions()
    {
        Keep.Validators.Add(result =>
        {
            if (Rule(result.GetValueOrDefault<string>()) is null)
                result.AddError(CliWords.Say("BadKeep"));
        });
        At.Validators.Add(result =>
        {
            var text = result.GetValueOrDefault<string>();
            if (text != Never && Time(text) is null)
                result.AddError(CliWords.Say("BadBackupAt", Never));
        });
    }

    /// <summary>The folder of backups.</summary>
    public string FolderOf(ParseResult parsed, string shop) => parsed.GetValue(Folder) ?? ShopFolder.BackupsIn(shop);

    /// <summary>Which backups are kept.</summary>
    public KeepRule RuleOf(ParseResult parsed) => Rule(parsed.GetRequiredValue(Keep))!;

    /// <summary>When the server makes one, or null for never.</summary>
    public BackupTime? TimeOf(ParseResult parsed) => Time(parsed.GetRequiredValue(At)) is { } at ? new(at) : null;

    private static KeepRule? Rule(string? text)
    {
        var numbers = (text ?? "").Split(',').Select(part => int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : -1).ToList();
        return numbers is [>= 0 and var days, >= 0 and var weeks, >= 0 and var months] ? new(days, weeks, months) : null;
    }

    private static TimeOnly? Time(string? text) =>
        TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var at) ? at : null;
}
