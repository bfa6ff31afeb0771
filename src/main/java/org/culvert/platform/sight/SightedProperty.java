package org.culvert.platform.sight;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.ser.BeanPropertyWriter;
import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** One property of a record, which is written as far as whoever asks may see it. */
final class SightedProperty extends BeanPropertyWriter {
    private static final long serialVersionUID = 1;

    /** Attribute of a serialisation: the outermost record that is somebody's own; what is inside it is as much so. */
    private static final Object WITHIN = new Object();

    /** Grid to which a coarse field is generalised at least, in degrees. */
    static final double COARSEST_SHOWN = 0.01;

    private final String resource;
    private final transient Sight sight;

    /** A record that may be somebody's own. */
    private record Whose(String resource, UUID id) {}

    SightedProperty(BeanPropertyWriter base, Class<?> bean, Sight sight) {
        super(base);
        this.resource = Resources.name(bean);
        this.sight = sight;
    }

    @Override
    public void serializeAsField(Object bean, JsonGenerator generator, SerializerProvider provider) throws Exception {
        if (provider.getAttribute(SightModule.KEPT) != null) {
            super.serializeAsField(bean, generator, provider);
            return;
        }
        Right right = sight.right(resource, getName());
        if (right.isNothing()) {
            return;
        }
        Whose outer = (Whose) provider.getAttribute(WITHIN);
        Whose told = outer == null ? whose(bean) : outer;
        Whose whose = told == null ? askedAbout() : told;
        Double grid = grid(right, bean, whose);
        if (grid == null) {
            provider.setAttribute(WITHIN, told);
            try {
                if (told == null) {
                    lookUpElements(get(bean));
                }
                super.serializeAsField(bean, generator, provider);
            } finally {
                provider.setAttribute(WITHIN, outer);
            }
            return;
        }
        Object value = right.otherwise() != Right.Otherwise.NOTHING && bean instanceof Generalised place
                ? place.generalised(grid == Sight.WITHHELD ? 0 : grid).get(getName())
                : null;
        if (value != null) {
            generator.writeFieldName(getName());
            provider.defaultSerializeValue(value, generator);
        } else if (bean instanceof EveryFieldTold) {
            generator.writeNullField(getName());
        }
    }

    /** Null where the field is shown as it is; else how far it is generalised, if it is shown at all. */
    private @Nullable Double grid(Right right, Object bean, @Nullable Whose whose) {
        if (right.exact() == Right.Exact.ALWAYS || (right.exact() == Right.Exact.OWN && isOwn(bean, whose))) {
            return null;
        }
        if (right.otherwise() == Right.Otherwise.NOTHING) {
            return Sight.WITHHELD;
        }
        double strictness = strictness(bean, whose);
        if (right.otherwise() == Right.Otherwise.COARSE) {
            return Math.max(strictness, COARSEST_SHOWN);
        }
        return strictness == 0 ? null : strictness;
    }

    private boolean isOwn(Object bean, @Nullable Whose whose) {
        return bean instanceof SelfTold told ? told.own() : whose != null && sight.isOwn(whose.resource(), whose.id());
    }

    private double strictness(Object bean, @Nullable Whose whose) {
        if (bean instanceof SelfTold told) {
            return told.strictness();
        }
        return whose == null ? Sight.WITHHELD : sight.strictness(whose.resource(), whose.id());
    }

    /** A list of records is looked up at once. */
    private void lookUpElements(@Nullable Object value) {
        if (!(value instanceof Collection<?> elements) || elements.isEmpty()) {
            return;
        }
        List<UUID> ids = new ArrayList<>();
        String of = null;
        for (Object element : elements) {
            Whose whose = element == null ? null : whose(element);
            if (whose != null) {
                of = whose.resource();
                ids.add(whose.id());
            }
        }
        if (of != null) {
            sight.lookUp(of, ids);
        }
    }

    /** What has no owner of its own is as much the asker's as the record whose address it was asked under. */
    private @Nullable Whose askedAbout() {
        SightTable.HeldPath record = sight.askedAbout();
        return record == null ? null : new Whose(record.resource(), UUID.fromString(record.id()));
    }

    private @Nullable Whose whose(Object bean) {
        if (!SightModule.isOurs(bean.getClass())) {
            return null;
        }
        String name = Resources.name(bean.getClass());
        if (sight.table().findHeld(name).isEmpty()) {
            return null;
        }
        Optional<Method> id = Arrays.stream(bean.getClass().getRecordComponents())
                .filter(component ->
                        component.getName().equals("id") && component.getType().equals(UUID.class))
                .findFirst()
                .map(RecordComponent::getAccessor);
        if (id.isEmpty()) {
            return null;
        }
        try {
            return new Whose(name, (UUID) id.get().invoke(bean));
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException("the identifier of " + name + " cannot be read", e);
        }
    }
}
