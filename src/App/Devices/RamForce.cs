using Ramwright.Metrology.Quantities;
using Ramwright.Proving.Reference;
using Ramwright.ServiceModels.Model;

namespace Ramwright.App.Devices;

/// <summary>How a force between the jaws of a tool becomes the pressure on its ram.</summary>
public static class RamForce
{
    /// <summary>What a calliper leaves open of the ram's diameter (common practice).</summary>
    private static readonly Length DiameterLimit = Length.FromMillimetres(0.05);

    /// <summary>Force of a compression spring as made, ± of the nominal force (EN 15800, grade 2; from memory).</summary>
    private const double SpringShare = 0.10;

    /// <summary>Friction changes with wear, oil and cold: half of it is taken as open (from memory).</summary>
    private const double FrictionShare = 0.5;

    /// <param name="measured">Friction that loading up and down has shown; null: the model's.</param>
    /// <summary>The conversion near the nominal pressure; null for a model without a ram. What the model does not state of spring and friction counts as zero.</summary>
    public static ForceConversion? Of(ServiceModel model, FrictionLoop.Shown? measured = null)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (model.Behaviour?.Ram is not { } ram)
            return null;
        // The jaws close near the end of the stroke, so the spring has nearly its whole travel.
        var spring = (ram.SpringPreload?.Newtons ?? 0) + ((ram.SpringRate?.NewtonsPerMetre ?? 0) * ram.Stroke.Metres);
        var friction = (ram.DryFriction?.Newtons ?? 0) + ((ram.SealFrictionShare ?? 0) * (model.Limits.Nominal * Area.OfCircle(ram.Diameter)).Newtons);
        var stated = new ForceConversion(ram.Diameter, DiameterLimit,
            Force.FromNewtons(spring), Force.FromNewtons(SpringShare * spring),
            Force.FromNewtons(friction), Force.FromNewtons(FrictionShare * friction));
        return measured is null ? stated : stated.With(measured);
    }
}
