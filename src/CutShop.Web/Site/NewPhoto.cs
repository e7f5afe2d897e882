namespace CutShop.Web.Site;

/// <summary>A photo that was read and is not kept yet: it has its name only from <see cref="Keep"/> on, and is gone when disposed of without.</summary>
/// <param name="half">Where it is written, whole and on the disk.</param>
/// <param name="file">Where it is to be.</param>
public sealed class NewPhoto(string half, string file) : IDisposable
{
    private bool _isNew;

    /// <summary>The name of the file.</summary>
    public string Name => Path.GetFileName(file);

    /// <summary>Gives it its name: with the report that has it, in that report's transaction.</summary>
    public void Keep()
    {
        if (File.Exists(file))
            return;
        File.Move(half, file);
        _isNew = true;
    }

    /// <summary>Takes it away where no report came of it.</summary>
    public void TakeBack()
    {
        if (_isNew)
            File.Delete(file);
    }

    /// <inheritdoc/>
    public void Dispose() => File.Delete(half);
}
