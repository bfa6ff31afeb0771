package org.culvert.web;

import io.quarkus.qute.Location;
import io.quarkus.qute.Template;
import jakarta.enterprise.context.ApplicationScoped;
import java.util.List;
import org.culvert.platform.EdgePage;
import org.jspecify.annotations.Nullable;

/** The page of a problem without the frame of the others. */
@ApplicationScoped
class BareProblemPage implements EdgePage {
    private final Template page;

    BareProblemPage(@Location("problem-bare.html") Template page) {
        this.page = page;
    }

    @Override
    public String render(String type, String title, int status, @Nullable String detail, @Nullable String requestId) {
        return render(new ToldProblem(
                type, title, status, detail, List.of(), List.of(), ToldProblem.remedy(type), requestId));
    }

    String render(ToldProblem problem) {
        return page.data("problem", problem).render();
    }
}
