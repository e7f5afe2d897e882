using System.Globalization;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;

namespace CutShop.Web.Benches;

/// <summary>Refuses, with 409, a tap of another person than the one who is signed in: a tablet is shared, and stores taps.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class OfItsPersonAttribute : Attribute, IAuthorizationFilter, IOrderedFilter
{
    /// <summary>The header in which the script says whose tap it sends, by the person's id.</summary>
    public const string TappedBy = "X-Tapped-By";

    /// <summary>Before what asks whether a person may do it.</summary>
    public int Order => -1;

    /// <inheritdoc/>
    public void OnAuthorization(AuthorizationFilterContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var request = context.HttpContext.Request;
        if (HttpMethods.IsPost(request.Method) && request.Headers[TappedBy] is { Count: > 0 } said
            && SignedIn.PersonOf(context.HttpContext) is { } person && said != person.Id.ToString(CultureInfo.InvariantCulture))
            context.Result = new StatusCodeResult(StatusCodes.Status409Conflict);
    }
}
