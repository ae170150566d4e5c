using Ramwright.ServiceModels.Model;

namespace Ramwright.ServiceModels.Levels;

/// <summary>Says which level a model has reached and what would unlock most.</summary>
public static class ModelLevel
{
    public static LevelReport Of(ServiceModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return new(0, [], []);
    }
}
