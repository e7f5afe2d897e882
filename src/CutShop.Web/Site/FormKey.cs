namespace CutShop.Web;

/// <summary>Keys of forms: a form carries one from when it is shown, so that sent twice it counts once.</summary>
public static class FormKey
{
    /// <summary>A new key.</summary>
    public static string New() => Guid.NewGuid().ToString("N");
}
