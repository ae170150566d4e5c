using System.Collections.Immutable;
using Ramwright.Metrology.Quantities;
using Ramwright.Parts;
using Ramwright.Planning.Strip;
using Ramwright.ServiceModels.Model;

namespace Ramwright.Records.Events;

/// <summary>It was decided which parts to free, and why.</summary>
public sealed record TargetsChosen(ImmutableArray<NodeId> Parts, string Why) : JobEvent;

/// <summary>A plan was taken on; steps are signed against the plan that stands last.</summary>
/// <param name="Start">Parts off and states reached when it was made.</param>
public sealed record StripPlanned(ImmutableArray<NodeId> Targets, ImmutableArray<NodeId> Start, StripPlan Plan) : JobEvent;

/// <summary>A price was named to the customer.</summary>
/// <param name="Number">The quote's number, as on its paper.</param>
/// <param name="Cover">What is to be bought for it; null where nothing is.</param>
public sealed record QuoteMade(string Number, Quote Quote, Cover? Cover, DateOnly ValidUntil) : JobEvent;

/// <summary>The customer answered the quote that stands last.</summary>
/// <param name="Who">Who said so at the customer's.</param>
/// <param name="Limit">The sum not to be exceeded that was agreed, before tax; null: as quoted.</param>
public sealed record QuoteAnswered(bool Accepted, string Who, Money? Limit, string? Note) : JobEvent;
