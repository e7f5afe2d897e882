using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.Filters;

namespace CutShop.Web.Shared;

/// <summary>Marks a page that everyone who is signed in may read and whose forms only some may send.</summary>
/// <param name="policy">What sending is, one of <see cref="Rights"/>.</param>
[AttributeUsage(AttributeTargets.Class)]
public sealed class MaySendAttribute(string policy) : Attribute, IAsyncAuthorizationFilter
{
    /// <summary>What sending is.</summary>
    public string Policy => policy;

    /// <inheritdoc/>
    public async Task OnAuthorizationAsync(AuthorizationFilterContext context)
    {
        ArgumentNullException.ThrowIfNull(context);
        var http = context.HttpContext;
        if (HttpMethods.IsGet(http.Request.Method) || HttpMethods.IsHead(http.Request.Method))
            return;
        var authorization = http.RequestServices.GetRequiredService<IAuthorizationService>();
        if (!(await authorization.AuthorizeAsync(http.User, resource: null, policy)).Succeeded)
            context.Result = new ForbidResult();
    }
}
