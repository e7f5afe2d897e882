namespace CutShop.Testing.Trust;

/// <summary>Where clients wait while the server is down.</summary>
internal sealed class Door
{
    private readonly Lock _lock = new();
    private TaskCompletionSource _open = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private int _waiting;

    public bool IsOpen => _open.Task.IsCompleted;

    public int Waiting => Volatile.Read(ref _waiting);

    public async Task PassAsync(CancellationToken cancel)
    {
        Task open;
        lock (_lock)
            open = _open.Task;
        Interlocked.Increment(ref _waiting);
        try
        {
            await open.WaitAsync(cancel);
        }
        finally
        {
            Interlocked.Decrement(ref _waiting);
        }
    }

    public void Open()
    {
        lock (_lock)
            _open.TrySetResult();
    }

    public void Close()
    {
        lock (_lock)
        {
            if (_open.Task.IsCompleted)
                _open = new(TaskCreationOptions.RunContinuationsAsynchronously);
        }
    }
}
