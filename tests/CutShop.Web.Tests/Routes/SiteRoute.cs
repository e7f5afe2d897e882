using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.AspNetCore.Mvc.RazorPages.Infrastructure;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;
using Microsoft.Extensions.DependencyInjection;

namespace CutShop.Web.Tests.Routes;

/// <summary>A field that a route reads from a query or a form, by the parameter or property that takes it.</summary>
internal sealed record RouteField(string Name, Type Type);

/// <summary>One way to call a route: a method, and of a page the handler.</summary>
internal sealed record RouteCall(string Method, string? Handler, IReadOnlyList<RouteField> Fields);

/// <summary>A route of the site as the site itself describes it: its places, its handlers, what they read, and who may call it.</summary>
internal sealed partial class SiteRoute
{
    private const string KeyReads = "key may read";
    private const string KeyTakesIn = "key may take in";
    private const string ReadsDescription = "may read the description";

    private static readonly string[] AllMethods = ["GET", "HEAD", "POST", "PUT", "DELETE", "PATCH", "OPTIONS"];

    private readonly RoutePattern _pattern;
    private readonly EndpointMetadataCollection _metadata;

    /// <param name="endpoint">The route.</param>
    /// <param name="metadata">What says who may call it.</param>
    /// <param name="handlers">The ways that it knows.</param>
    /// <param name="others">Methods that another route of the same address answers.</param>
    private SiteRoute(RouteEndpoint endpoint, EndpointMetadataCollection metadata, IEnumerable<RouteCall> handlers, IReadOnlyCollection<string> others)
    {
        (_pattern, _metadata) = (endpoint.RoutePattern, metadata);
        var known = handlers.ToList();
        Calls = [.. known, .. AllMethods.Except(others).Where(method => known.All(call => call.Method != method || call.Handler is not null)).Select(method => new RouteCall(method, Handler: null, []))];
    }

    /// <summary>Every method, and every handler with what it reads.</summary>
    public IReadOnlyList<RouteCall> Calls { get; }

    /// <summary>Its places, such as a job's number.</summary>
    public IEnumerable<string> Places => _pattern.Parameters.Select(parameter => parameter.Name);

    public override string ToString() => "/" + _pattern.RawText!.TrimStart('/');

    /// <summary>All routes of a shop.</summary>
    public static async Task<IReadOnlyList<SiteRoute>> AllAsync(IServiceProvider services, IEnumerable<RouteEndpoint> endpoints)
    {
        var loader = services.GetRequiredService<PageLoader>();
        var (all, routes) = (endpoints.ToList(), new List<SiteRoute>());
        foreach (var endpoint in all)
        {
            if (endpoint.Metadata.GetMetadata<PageActionDescriptor>() is { } page)
            {
                var compiled = await loader.LoadAsync(page, endpoint.Metadata);
                routes.Add(new(endpoint, new(compiled.ModelTypeInfo!.GetCustomAttributes(inherit: true)), compiled.HandlerMethods.Select(handler => Of(handler, compiled)), []));
            }
            else
            {
                var methods = MethodsOf(endpoint);
                var others = all.Where(other => other != endpoint && other.RoutePattern.RawText == endpoint.RoutePattern.RawText).SelectMany(MethodsOf).ToList();
                var fields = FieldsOf(endpoint.Metadata.GetMetadata<MethodInfo>()?.GetParameters() ?? []);
                routes.Add(new(endpoint, endpoint.Metadata, methods.Select(method => new RouteCall(method, Handler: null, fields)), others));
            }
        }
        return routes;
    }

    /// <summary>An address of the route.</summary>
    /// <param name="valueOf">What stands in a place, as it stands in an address.</param>
    public string Address(Func<string, string> valueOf) => "/" + string.Join('/', _pattern.PathSegments.Select(segment => string.Concat(segment.Parts.Select(part => part switch
    {
        RoutePatternLiteralPart literal => literal.Content,
        RoutePatternSeparatorPart separator => separator.Content,
        RoutePatternParameterPart parameter => valueOf(parameter.Name),
        _ => "",
    }))));

    /// <summary>The first of the words that a place is bound to by the route, such as a kind of paper; null where it is free.</summary>
    public string? WordFor(string place) =>
        _pattern.ParameterPolicies.TryGetValue(place, out var policies)
            ? policies.Select(policy => policy.Content is "long" ? "1" : Words().Match(policy.Content ?? "").Groups["first"].Value).FirstOrDefault(word => word.Length > 0)
            : null;

    /// <summary>True where the table of rights lets a caller in: a role, a key's scope, or nobody.</summary>
    public bool LetsIn(Role? role, KeyScope? key, string method)
    {
        if (_metadata.GetMetadata<IAllowAnonymous>() is not null)
            return true;
        var policies = _metadata.GetOrderedMetadata<IAuthorizeData>().Select(data => data.Policy).OfType<string>().ToList();
        if (method is not ("GET" or "HEAD") && _metadata.GetMetadata<MaySendAttribute>() is { } send)
            policies.Add(send.Policy);
        return policies.Count == 0 ? role is not null : policies.All(policy => policy switch
        {
            KeyReads => key is not null || _metadata.GetOrderedMetadata<IAuthorizeData>().Any(data => data.Policy == ReadsDescription),
            KeyTakesIn => key == KeyScope.TakeIn,
            ReadsDescription => key is not null || role is not null,
            _ => role is { } person && Rights.RolesOf(policy).Contains(person),
        });
    }

    private static IReadOnlyList<string> MethodsOf(RouteEndpoint endpoint) => endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods ?? ["GET"];

    private static RouteCall Of(HandlerMethodDescriptor handler, CompiledPageActionDescriptor page) => new(
        handler.HttpMethod.ToUpperInvariant(),
        handler.Name,
        [
            .. FieldsOf(handler.Parameters.Select(parameter => parameter.ParameterInfo)),
            .. page.BoundProperties.Select(property => new RouteField(property.BindingInfo?.BinderModelName ?? property.Name, property.ParameterType)),
        ]);

    /// <summary>What is read as text of a query or a form; what a service brings is none.</summary>
    private static IReadOnlyList<RouteField> FieldsOf(IEnumerable<ParameterInfo> parameters) =>
    [
        .. from parameter in parameters
           where parameter.Name is not null
           let type = Nullable.GetUnderlyingType(parameter.ParameterType) ?? parameter.ParameterType
           where type == typeof(string) || type.IsValueType && type != typeof(CancellationToken)
           select new RouteField(parameter.Name!, type),
    ];

    [GeneratedRegex(@"\^?\(?(?<first>[a-z]+(-[a-z]+)*)[|)]", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Words();
}
