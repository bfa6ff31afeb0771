package org.culvert.web.words;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** What the pages of traffic say. */
@MessageBundle("traffic")
public interface TrafficWords {
    @Message("Traffic")
    String title();

    @Message("How many vehicles go along a road says how many collisions a road like it would have. "
            + "Each count stands at its place with its year and its source; a link of road takes the "
            + "figure of the nearest station along it.")
    String whatFor();

    @Message("Bring a file of counts")
    String bring();

    @Message("GeoJSON or GeoPackage. A file is tried first: every row is read and looked for on the "
            + "roads, and nothing is entered before you say so.")
    String bringHint();

    @Message("Files of counts: bring one, or look at those that were brought")
    String toFiles();

    @Message("What is known of the file already, if anything")
    String knownBefore();

    @Message("{entered} counts entered, of {features} features.")
    String taken(String entered, String features);

    @Message("Try it")
    String tryIt();

    @Message("It was not done.")
    String notDone();

    @Message("Entered: {count}.")
    String entered(Object count);

    @Message("What is known")
    String known();

    @Message("Road")
    String road();

    @Message("every road")
    String everyRoad();

    @Message("Year")
    String year();

    @Message("every year")
    String everyYear();

    @Message("Show")
    String show();

    @Message("No count is here. Councils and roads authorities publish theirs as GeoJSON or "
            + "GeoPackage; until there are some, roads have the figure of the file of roads, or none.")
    String nothing();

    @Message("Station")
    String station();

    @Message("Period")
    String period();

    @Message("Vehicles a day")
    String vehicles();

    @Message("How it is known")
    String howKnown();

    @Message("Source")
    String source();

    @Message("{from} to {to}")
    String fromTo(String from, String to);

    @Message("{value.intValue}")
    String number(Double value);

    @Message("{#switch kind}{#case 'continuous'}counter all the year{#case 'shortTerm'}counted on "
            + "some days{#case 'estimated'}estimated{#else}{kind}{/switch}")
    String kindIs(String kind);

    @Message("{#switch measure}{#case 'annualAverage'}average of the year{#case "
            + "'averageOfDaysCounted'}average of the days counted{#else}{measure}{/switch}")
    String measureIs(String measure);

    @Message("{#switch directions}{#case 'both'}both directions{#case 'one'}one "
            + "direction{#else}{directions}{/switch}")
    String directionsAre(String directions);

    @Message("Taken back: {why}")
    String withdrawn(Object why);

    @Message("Take back")
    String takeBack();

    @Message("Take back: {road}, km {km}")
    String takeBackOf(Object road, Object km);

    @Message("Why")
    String why();

    @Message("Older ones")
    String older();

    @Message("Enter one count")
    String typeOne();

    @Message("Where the counter stands")
    String place();

    @Message("Road and kilometre, two roads that meet, or coordinates.")
    String placeHint();

    @Message("As whoever counts calls it: years and directions of one place belong together by it.")
    String stationHint();

    @Message("First day")
    String firstDay();

    @Message("Last day")
    String lastDay();

    @Message("Average of what")
    String measure();

    @Message("Directions")
    String directions();

    @Message("Which direction")
    String direction();

    @Message("Of one direction alone, such as northbound.")
    String directionHint();

    @Message("Days counted")
    String daysCounted();

    @Message("Standard error, vehicles a day")
    String standardError();

    @Message("Share of heavy vehicles, 0 to 1")
    String heavyShare();

    @Message("Who counted or estimated, and where it is published.")
    String sourceHint();

    @Message("Anything else")
    String words();

    @Message("Enter")
    String enter();

    @Message("Rows: {rows}. Understood: {understood}. Refused: {refused}.")
    String found(int rows, int understood, int refused);

    @Message("Something has to be said before any row can be read.")
    String notEnough();

    @Message("Nothing is entered yet.")
    String nothingEntered();

    @Message("How it is read")
    String howRead();

    @Message("Attributes that were told apart by their names alone. Look at each: nothing else speaks for it.")
    String proposalsHint();

    @Message("{#switch parameter}{#case 'stationAttribute'}Station{#case 'roadAttribute'}Road{#case "
            + "'yearAttribute'}Year{#case 'fromAttribute'}First day{#case 'toAttribute'}Last day{#case "
            + "'vehiclesPerDayAttribute'}Vehicles a day{#case 'standardErrorAttribute'}Standard "
            + "error{#case 'daysCountedAttribute'}Days counted{#case "
            + "'directionAttribute'}Direction{#case 'heavyVehicleAttribute'}Heavy vehicles{#case "
            + "'kindAttribute'}How it is known{#else}{parameter}{/switch}")
    String column(String parameter);

    @Message("no column")
    String noColumn();

    @Message("proposed by its name.")
    String proposed();

    @Message("Perhaps instead:")
    String perhaps();

    @Message("Try again")
    String tryAgain();

    @Message("Enter what was understood: {count}")
    String enterCounts(int count);

    @Message("As long as it is not said below that refused rows are left out, one of them, and nothing is entered.")
    String refusedHint();

    @Message("Enter the counts")
    String enterAll();

    @Message("Row by row")
    String rows();

    @Message("Row")
    String row();

    @Message("What became of it")
    String verdict();

    @Message("understood")
    String understood();

    @Message("refused")
    String refused();

    @Message("{count} more rows are not shown.")
    String rowsLeft(int count);
}
