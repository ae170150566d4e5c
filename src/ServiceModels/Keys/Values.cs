using Ramwright.Metrology.Input;
using Ramwright.ServiceModels.Forms;
using Ramwright.ServiceModels.Reading;

namespace Ramwright.ServiceModels.Keys;

/// <summary>The forms of values, with the bounds that no sound model of a hand-held tool passes, named for the table of keys.</summary>
internal static class Values
{
    public static KeyForm Pressure { get; } = Above(Dimension.Pressure, 0, 4e8);

    public static KeyForm PressureWindow { get; } = new WindowForm(Dimension.Pressure, 0, 4e8);

    public static KeyForm ForceWindow { get; } = new WindowForm(Dimension.Force, 0, 1e7);

    public static KeyForm Force { get; } = new QuantityForm(Dimension.Force, 0, 1e7);

    public static KeyForm Length { get; } = Above(Dimension.Length, 0, 10);

    public static KeyForm LengthOrZero { get; } = new QuantityForm(Dimension.Length, 0, 10);

    public static KeyForm AnyLength { get; } = new QuantityForm(Dimension.Length, -10, 10);

    public static KeyForm Mass { get; } = Above(Dimension.Mass, 0, 1000);

    public static KeyForm Volume { get; } = Above(Dimension.Volume, 0, 0.1);

    public static KeyForm VolumeOrZero { get; } = new QuantityForm(Dimension.Volume, 0, 0.1);

    public static KeyForm Duration { get; } = new QuantityForm(Dimension.Time, 0, 3600 * 24);

    public static KeyForm Years { get; } = Above(Dimension.Time, 0, 200 * 365.25 * 86_400);

    public static KeyForm Stiffness { get; } = Above(Dimension.Stiffness, 0, 1e12);

    public static KeyForm Torque { get; } = Above(Dimension.Torque, 0, 5000);

    public static KeyForm TorqueOrZero { get; } = new QuantityForm(Dimension.Torque, 0, 5000);

    public static KeyForm Angle { get; } = new QuantityForm(Dimension.Angle, 0, 2 * Math.PI);

    public static KeyForm Share { get; } = new ShareForm();

    public static KeyForm Money { get; } = new MoneyForm();

    public static KeyForm MoneyPerLitre { get; } = new MoneyForm(PerLitre: true);

    public static KeyForm Minutes { get; } = new NumberForm(0, 1000, "minutes");

    public static KeyForm Count { get; } = new WholeNumberForm(1, 1000);

    public static KeyForm Flag { get; } = new FlagForm();

    public static KeyForm Nodes { get; } = ListOf(Named.Node);

    public static KeyForm Parts { get; } = ListOf(Named.Part);

    public static KeyForm Symptoms { get; } = ListOf(Named.Symptom);

    public static KeyForm Tool { get; } = new ReferenceForm(Named.Tool);

    public static KeyForm Posture { get; } = new ReferenceForm(Named.Posture);

    public static KeyForm Text(string sample) => new TextForm(sample);

    public static KeyForm Word<T>(string what)
        where T : struct, Enum => new WordForm<T>(what);

    public static KeyForm Number(double least, double most, string unit = "") => new NumberForm(least, most, unit);

    public static KeyForm Above(Dimension dimension, double least, double most) => new QuantityForm(dimension, least, most) { AboveLeast = true };

    public static KeyForm Group(Section section) => new SectionForm(section);

    public static KeyForm GroupsOf(Section section) => new ListForm(new SectionForm(section));

    public static KeyForm ById(Section section, Named? kind) => new IdMapForm(new SectionForm(section), kind);

    private static ListForm ListOf(Named kind) => new(new ReferenceForm(kind));
}
