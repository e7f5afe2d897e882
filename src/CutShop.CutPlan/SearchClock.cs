using System.Diagnostics;

namespace CutShop.CutPlan;

/// <summary>How long a search may still go on: until its budget is spent or it is cancelled.</summary>
internal sealed class SearchClock(TimeSpan budget, CancellationToken cancelled)
{
    private readonly long _start = Stopwatch.GetTimestamp();

    /// <summary>The caller's wish to stop.</summary>
    public CancellationToken Cancelled => cancelled;

    /// <summary>Time since the start.</summary>
    public TimeSpan Spent => Stopwatch.GetElapsedTime(_start);

    /// <summary>Time left, zero where it is up.</summary>
    public TimeSpan Left
    {
        get
        {
            var left = budget - Spent;
            return cancelled.IsCancellationRequested || left < TimeSpan.Zero ? TimeSpan.Zero : left;
        }
    }

    /// <summary>True where the search must end with what it has.</summary>
    public bool IsUp => Left == TimeSpan.Zero;

    /// <summary>A shorter clock inside this one: at most this long, and never past it.</summary>
    public SearchClock AtMost(TimeSpan span)
    {
        var left = Left;
        return new(span < left ? span : left, cancelled);
    }
}
