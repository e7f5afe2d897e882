using System.Reflection;
using Microsoft.AspNetCore.Mvc.ModelBinding.Metadata;

namespace CutShop.Web.Host;

/// <summary>
/// Leaves blank space as it was sent where a page's handler takes a text that must be there, such as a code in its address. The framework
/// makes null of it, which a text that must be there never is.
/// </summary>
internal sealed class BlankText : IDisplayMetadataProvider
{
    public void CreateDisplayMetadata(DisplayMetadataProviderContext context)
    {
        if (context.Key.ParameterInfo is { } parameter && parameter.ParameterType == typeof(string)
            && new NullabilityInfoContext().Create(parameter).WriteState == NullabilityState.NotNull)
            context.DisplayMetadata.ConvertEmptyStringToNull = false;
    }
}
