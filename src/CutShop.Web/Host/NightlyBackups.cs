using CutShop.Shop.Maintenance;
using CutShop.Shop.Store;
using CutShop.Web.Shared;

namespace CutShop.Web.Host;

/// <summary>Makes a backup every day while the server runs. One that failed is tried again; the log says so.</summary>
internal sealed partial class NightlyBackups(ShopDatabase database, NightlySettings settings, TimeProvider time, ILogger<NightlyBackups> logger)
    : BackgroundService
{
    private static readonly TimeSpan Look = TimeSpan.FromMinutes(1);
    private static readonly TimeSpan TryAgain = TimeSpan.FromMinutes(15);

    private readonly ShopBackups _backups = new(database.Path, settings.Folder, time);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // The server starts first.
        await Task.Yield();
        while (!stoppingToken.IsCancellationRequested)
            await Task.Delay(MakeIfDue() ? Look : TryAgain, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
    }

    /// <returns>False where a backup was due and was not made well.</returns>
    private bool MakeIfDue()
    {
        try
        {
            if (!settings.Time.IsDue(time.GetUtcNow(), time.LocalTimeZone, _backups.All.Where(backup => backup.IsSound).Select(backup => backup.MadeAt)))
                return true;
            var answer = _backups.Make(settings.Keep);
            foreach (var finding in answer.Findings)
                LogFinding(logger, answer.File.Path, finding);
            return answer.File.IsSound;
        }
#pragma warning disable CA1031 // Whatever it is, the server goes on and tries again.
        catch (Exception e)
#pragma warning restore CA1031
        {
            LogFailed(logger, settings.Folder, StorageError.Of(e)?.Text ?? e.Message, e);
            return false;
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Something is off in the backup {Backup}: {Finding}")]
    private static partial void LogFinding(ILogger logger, string backup, CheckFinding finding);

    [LoggerMessage(Level = LogLevel.Error, Message = "No backup was made in {Folder}: {Why}")]
    private static partial void LogFailed(ILogger logger, string folder, string why, Exception exception);
}
